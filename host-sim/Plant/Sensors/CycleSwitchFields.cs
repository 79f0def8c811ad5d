using LubeController.Plant.Checking;
using LubeController.Plant.Contacts;
using LubeController.Plant.Fields;
using LubeController.Plant.Pistons;

namespace LubeController.Plant.Sensors;

/// <summary>The fields of a cycle switch.</summary>
public static class CycleSwitchFields
{
    internal static TextField<CycleSwitchDescription> Name { get; } = new("name", "", TextForm.Name, "piston-4", c => c.Name, (c, v) => c with { Name = v }) { Required = true };

    internal static TextField<CycleSwitchDescription> Section { get; } = new("section", "The section whose piston it senses.", TextForm.Name, "4", c => c.Section, (c, v) => c with { Section = v }) { Required = true };

    private static readonly NumberField<CycleSwitchDescription> Trip = new("trip-travel", "Distance from its end at which it trips, part of the travel.", Measure.Ratio, "%", 0, 1, c => c.TripTravel, (c, v) => c with { TripTravel = v });
    private static readonly NumberField<CycleSwitchDescription> Hysteresis = new("hysteresis", "It releases this much further away, part of the travel.", Measure.Ratio, "%", 0, 1, c => c.Hysteresis, (c, v) => c with { Hysteresis = v });

    /// <summary>All of them.</summary>
    public static FieldSet<CycleSwitchDescription> All { get; } = new(
        "a cycle switch",
        new CycleSwitchDescription { Name = "", Section = "" },
        Name,
        Section,
        new ChoiceField<CycleSwitchDescription, Side>("end", "End of travel near which it is actuated.", SideWords.Sides, c => c.End, (c, v) => c with { End = v }),
        Trip,
        Hysteresis,
        new ChoiceField<CycleSwitchDescription, SwitchContact>("contact", "", ContactWords.Switches, c => c.Contact, (c, v) => c with { Contact = v }),
        new GroupField<CycleSwitchDescription, SensorLoopDescription>("sensor", "The loop behind the switch: switch, cable, supply and input.", SensorLoopFields.All, c => c.Sensor, (c, v) => c with { Sensor = v }) { Absent = "an ideal contact" })
    {
        Rules =
        [
            new(Trip, c => c.TripTravel is > 0 and < 1, c => "above 0 and below 1 of the travel"),
            new(Hysteresis, c => c.TripTravel + c.Hysteresis < 1, c => $"0 up to, not including, {Findings.Show(1 - c.TripTravel)} of the travel"),
        ],
    };
}
