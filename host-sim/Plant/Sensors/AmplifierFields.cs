using LubeController.Plant.Checking;
using LubeController.Plant.Fields;

namespace LubeController.Plant.Sensors;

/// <summary>The fields of the switching amplifier of a NAMUR switch.</summary>
public static class AmplifierFields
{
    /// <summary>All of them.</summary>
    public static FieldSet<NamurAmplifierDescription> All { get; } = new(
        "an amplifier",
        new NamurAmplifierDescription(),
        new NumberField<NamurAmplifierDescription>("voltage", "", Measure.Voltage, "V", 1, 30, a => a.OpenV, (a, v) => a with { OpenV = v }),
        new NumberField<NamurAmplifierDescription>("resistance", "", Measure.Resistance, "ohm", 1, 1e5, a => a.InsideOhms, (a, v) => a with { InsideOhms = v }),
        new NumberField<NamurAmplifierDescription>("low", "Blocked at and below.", Measure.Current, "mA", 0, 1, a => a.LowA, (a, v) => a with { LowA = v }),
        new NumberField<NamurAmplifierDescription>("high", "Conducting at and above.", Measure.Current, "mA", 0, 1, a => a.HighA, (a, v) => a with { HighA = v }),
        new NumberField<NamurAmplifierDescription>("broken", "Wire broken at and below.", Measure.Current, "mA", 0, 1, a => a.BreakA, (a, v) => a with { BreakA = v }),
        new NumberField<NamurAmplifierDescription>("shorted", "Wires shorted at and above.", Measure.Current, "mA", 0, 1, a => a.ShortA, (a, v) => a with { ShortA = v }),
        new ChoiceField<NamurAmplifierDescription, bool>("on-at", "", [new("high-current", true), new("low-current", false)], a => a.OnAtHighCurrent, (a, v) => a with { OnAtHighCurrent = v }),
        new ChoiceField<NamurAmplifierDescription, bool>("at-fault", "Level while a break or a short is seen.", [new("on", true), new("off", false)], a => a.OnAtFault, (a, v) => a with { OnAtFault = v }))
    {
        Whole = Rising,
    };

    private static void Rising(Findings findings, string path, NamurAmplifierDescription amplifier)
    {
        bool rising = amplifier.LowA > amplifier.BreakA && amplifier.HighA >= amplifier.LowA && amplifier.ShortA > amplifier.HighA;
        if (!rising)
            findings.Refuse(path, $"{Findings.Show(amplifier.BreakA)}, {Findings.Show(amplifier.LowA)}, {Findings.Show(amplifier.HighA)}, {Findings.Show(amplifier.ShortA)}", "break, low, high and short currents that rise, A");
    }
}
