using System.Collections.Generic;
using LubeController.Core;
using LubeController.Scripts.SettingsFiles;

namespace LubeController.Scripts.Wiring;

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
                Add(all, id);
        }

        all.Add(new WiringCondition("no power", "", OutputPattern.Dead));
        return all;
    }

    private static void Add(List<WiringCondition> all, AlarmId id)
    {
        string name = AlarmTable.NameOf(id);
        AlarmCategory category = AlarmTable.CategoryOf(id);
        all.Add(Of(name, category));
        // The one alarm whose category depends on the switch: of the dose-ending one it is a failure.
        if (id == AlarmId.CycleSwitchFault && category != AlarmCategory.Failure)
            all.Add(Of(name + " of the dose-ending switch", AlarmCategory.Failure));
    }

    private static WiringCondition Of(string name, AlarmCategory category) => new(name, Words(category), OutputPattern.Of(category));

    private static string Words(AlarmCategory category) => category switch
    {
        AlarmCategory.Failure => "failure",
        AlarmCategory.OutOfSpecification => "out of specification",
        _ => "maintenance required",
    };
}
