using System;
using System.Linq;
using LubeController.Core;
using Spec = LubeController.Analysis.Specification;

namespace LubeController.Analysis.Exploration;

/// <summary>What the alarms that stand demand, by the table of the specification and not by the core's own.</summary>
internal static class AlarmFacts
{
    private static readonly int Interlocks = Mask(rule => rule.Action == Spec.AlarmAction.Interlock);
    private static readonly int DoseEnding = Mask(rule => rule.Action == Spec.AlarmAction.DoseEnding);
    private static readonly int Holding = Mask(rule => rule.Action == Spec.AlarmAction.Holding);
    private static readonly int Failures = Mask(rule => rule.Category == Spec.AlarmCategory.Failure);
    private static readonly int SwitchFault = 1 << (int)AlarmId.CycleSwitchFault;
    private static readonly int Disagreement = 1 << (int)AlarmId.SensorsDisagree;

    /// <summary>The interlocks among some alarms.</summary>
    public static int InterlocksOf(int standing) => standing & Interlocks;

    /// <summary>Those that hold the pump.</summary>
    public static int HoldingOf(int standing) => standing & Holding;

    /// <summary>Interlocks and dose-ending ones.</summary>
    /// <param name="standing">One bit for each alarm.</param>
    /// <param name="core">Tells whether the fault of a cycle switch is that of the dose-ending one.</param>
    /// <param name="doseEndingSwitch">Index of that switch.</param>
    public static int StoppingOf(int standing, Controller core, int doseEndingSwitch) =>
        standing & (Interlocks | (DoseEnding & ~SwitchFault) | (core.IsDistrusted(doseEndingSwitch) ? SwitchFault : 0));

    /// <summary>Failures.</summary>
    public static int FailuresOf(int standing, Controller core, int doseEndingSwitch) =>
        standing & ((Failures & ~SwitchFault & ~Disagreement)
            | (core.IsDistrusted(doseEndingSwitch) ? SwitchFault : 0)
            | (core.Alarms.CategoryOf(AlarmId.SensorsDisagree) == AlarmCategory.Failure ? Disagreement : 0));

    private static int Mask(Func<Spec.AlarmRule, bool> demands)
    {
        int mask = 0;
        for (int index = 0; index < AlarmTable.Count; index++)
        {
            string name = AlarmTable.Spec((AlarmId)index).Name;
            if (demands(Spec.AlarmTable.All.Single(rule => rule.Name == name)))
                mask |= 1 << index;
        }

        return mask;
    }
}
