using System.Collections.Generic;
using LubeController.Core;
using LubeController.Files.SettingsFiles;

namespace LubeController.Analysis.Wiring;

/// <summary>Something that the supervisory system should learn of.</summary>
/// <param name="Name">Name of the alarm, or what it is in words.</param>
/// <param name="Category">Category of NAMUR NE 107 in words, or empty.</param>
/// <param name="Pattern">What the outputs do while it stands.</param>
public sealed record WiringCondition(string Name, string Category, OutputPattern Pattern)
{
    /// <summary>Every alarm of the core's table, and the loss of power, which is told like a failure.</summary>
    public static IReadOnlyList<WiringCondition> All { get; } = Make(null);

    /// <summary>The alarms that some settings can raise, and the loss of power.</summary>
    public static IReadOnlyList<WiringCondition> Of(ControlSettings settings) => Make(settings);

    private static List<WiringCondition> Make(ControlSettings? settings)
    {
        var all = new List<WiringCondition>();
        for (int index = 0; index < AlarmTable.Count; index++)
        {
            var id = (AlarmId)index;
            if (settings == null || AlarmsInReach.CanRise(id, settings))
                Add(all, id, settings == null || AlarmsInReach.LosesProtection(settings));
        }

        all.Add(new WiringCondition("no power", "", OutputPattern.Dead));
        return all;
    }

    private static void Add(List<WiringCondition> all, AlarmId id, bool losesProtection)
    {
        string name = AlarmTable.Spec(id).Name;
        AlarmCategory category = AlarmTable.Spec(id).Category;
        all.Add(Of(name, category));
        // The two alarms whose category depends on what they are about.
        if (id == AlarmId.CycleSwitchFault)
            all.Add(Of(name + " of the dose-ending switch", AlarmCategory.Failure));
        if (id == AlarmId.SensorsDisagree && losesProtection)
            all.Add(Of(name + " about the pressure that a transmitter guards", AlarmCategory.Failure));
    }

    private static WiringCondition Of(string name, AlarmCategory category) => new(name, Words(category), OutputPattern.Of(category));

    private static string Words(AlarmCategory category) => category switch
    {
        AlarmCategory.Failure => "failure",
        AlarmCategory.OutOfSpecification => "out of specification",
        _ => "maintenance required",
    };
}
