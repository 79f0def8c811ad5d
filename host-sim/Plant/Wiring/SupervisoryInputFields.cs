using System.Linq;
using LubeController.Plant.Checking;
using LubeController.Plant.Fields;
using LubeController.Plant.Inputs;

namespace LubeController.Plant.Wiring;

/// <summary>The fields of a supervisory input.</summary>
public static class SupervisoryInputFields
{
    private static readonly FieldSet<VoltageWindow> Window = new(
        "a window",
        new VoltageWindow("", double.NaN, double.NaN),
        new TextField<VoltageWindow>("state", "", TextForm.Name, "normal", w => w.State, (w, v) => w with { State = v }) { Required = true },
        new NumberField<VoltageWindow>("low", "", Measure.Voltage, "V", -60, 60, w => w.LowV, (w, v) => w with { LowV = v }) { Required = true },
        new NumberField<VoltageWindow>("high", "", Measure.Voltage, "V", -60, 60, w => w.HighV, (w, v) => w with { HighV = v }) { Required = true });

    private static readonly ListField<LineSupervision, VoltageWindow> Windows = new("windows", "", Window, s => s.Windows, (s, v) => s with { Windows = v }) { Least = 1, Most = 200, Required = true, Remedy = "write for instance '- { state: normal, low: 3.5 V, high: 4.5 V }'" };

    private static readonly FieldSet<LineSupervision> Supervision = new(
        "a line supervision",
        new LineSupervision { Ohms = double.NaN, Windows = [] },
        new NumberField<LineSupervision>("feed", "Voltage with which it feeds the line.", Measure.Voltage, "V", 0, 60, s => s.FeedV, (s, v) => s with { FeedV = v }),
        new NumberField<LineSupervision>("resistance", "Of the feed, or of the input itself where it does not feed.", Measure.Resistance, "ohm", 1, 1e6, s => s.Ohms, (s, v) => s with { Ohms = v }) { Required = true },
        Windows,
        new TextField<LineSupervision>("elsewhere", "The state outside all windows.", TextForm.Name, "fault", s => s.Elsewhere, (s, v) => s with { Elsewhere = v }))
    {
        Whole = Apart,
    };

    /// <summary>All of them.</summary>
    public static FieldSet<SupervisoryInputDescription> All { get; } = new(
        "a supervisory input",
        new SupervisoryInputDescription { Name = "", From = "", To = "" },
        CircuitFields.Name<SupervisoryInputDescription>(i => i.Name, (i, v) => i with { Name = v }),
        CircuitFields.Terminal<SupervisoryInputDescription>("from", i => i.From, (i, v) => i with { From = v }),
        CircuitFields.Terminal<SupervisoryInputDescription>("to", i => i.To, (i, v) => i with { To = v }, "Its common terminal."),
        new ChoiceField<SupervisoryInputDescription, InputType>("type", "Type of IEC 61131-2.", InputWords.Types, i => i.Type, (i, v) => i with { Type = v }),
        new ChoiceField<SupervisoryInputDescription, UndefinedPolicy>("undefined", "What it makes of the zone that the standard leaves undefined.", InputWords.Policies, i => i.Undefined, (i, v) => i with { Undefined = v }),
        new GroupField<SupervisoryInputDescription, LineSupervision>("supervision", "An input that tells the state of its line by the voltage across it, in place of type and undefined.", Supervision, i => i.Supervision, (i, v) => i with { Supervision = v })
        {
            InPlaceOf = (["type", "undefined"], "an input that supervises its line"),
        });

    private static void Apart(Findings findings, string path, LineSupervision supervision)
    {
        VoltageWindow[] rising = [.. supervision.Windows.OrderBy(window => window.LowV)];
        for (int k = 0; k < rising.Length; k++)
        {
            if (!(rising[k].HighV > rising[k].LowV))
                findings.Refuse(Windows.Below(path), $"'{rising[k].State}' {Findings.Show(rising[k].LowV)} to {Findings.Show(rising[k].HighV)} V", "a window that ends above where it begins");
            if (k > 0 && rising[k].LowV < rising[k - 1].HighV)
                findings.Refuse(Windows.Below(path), $"'{rising[k].State}' from {Findings.Show(rising[k].LowV)} V", $"from {Findings.Show(rising[k - 1].HighV)} V, where '{rising[k - 1].State}' ends");
        }
    }
}
