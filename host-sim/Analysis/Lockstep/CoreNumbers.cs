using System;
using LubeController.Analysis.Specification;

namespace LubeController.Analysis.Lockstep;

/// <summary>The core's numbers of the specification's alarms; both faults of cycle switches are one alarm of the core.</summary>
internal static class CoreNumbers
{
    private static readonly int[] Numbers = NumbersInTheCore();

    /// <summary>The core's number of an alarm, or -1 for none.</summary>
    public static int NumberOf(AlarmId? alarm) => alarm is AlarmId id ? Numbers[(int)id] : -1;

    /// <summary>The name of the core's number.</summary>
    public static string NameOf(int number)
    {
        int index = Array.IndexOf(Numbers, number);
        return index < 0 ? "none" : AlarmTable.All[index].Name;
    }

    /// <summary>Does something to every alarm that has a number in the core.</summary>
    public static void ForEach(int number, Action<AlarmId> deed)
    {
        for (int index = 0; index < Numbers.Length; index++)
        {
            if (Numbers[index] == number)
                deed((AlarmId)index);
        }
    }

    private static int[] NumbersInTheCore()
    {
        int[] numbers = new int[AlarmTable.All.Count];
        for (int index = 0; index < numbers.Length; index++)
            numbers[index] = LockstepSettings.CoreNumberOf((AlarmId)index);
        return numbers;
    }
}
