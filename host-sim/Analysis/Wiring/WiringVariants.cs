using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Plant.Contacts;
using LubeController.Plant.Wiring;

namespace LubeController.Analysis.Wiring;

/// <summary>
/// The same wiring with one measure taken on one output, part names kept, so that a fault can be tried again. Measures are
/// tried, not assumed: one that would not show the fault in this circuit is not advised.
/// </summary>
internal sealed class WiringVariants(SupervisoryWiringDescription wiring, OutputPattern health, OutputPattern alarm)
{
    private const double SeriesOhms = 1000;
    private const double ParallelOhms = 2200;
    private const double BurdenOhms = 1000;

    // What lies further than this share of the gap from both voltages is a fault.
    private const double WindowShare = 0.15;

    private static readonly LineSupervision Unread = new() { Ohms = BurdenOhms, Windows = [new("any", -60, 60)] };

    /// <summary>Each measure on each output, ready to be probed.</summary>
    public IEnumerable<(WiringMeasures Measure, WiringProbe Probe)> All()
    {
        foreach (string output in wiring.Contacts.Select(contact => contact.Output).Distinct(StringComparer.Ordinal))
        {
            OutputPattern moved = health.With(output, health[output] == OutputState.Off ? OutputState.On : OutputState.Off);
            int[] followers = Followers(moved);
            // An output that no input follows has a lamp or nothing on it: there is nothing to supervise.
            if (followers.Length == 0 || health[output] == OutputState.Beating)
                continue;
            SupervisoryWiringDescription other = WithOtherSide(output);
            bool open = IsOpenInHealth(output);
            if (open)
                yield return (WiringMeasures.NormallyClosedContact, new WiringProbe(other, health, alarm));
            if (WithEndOfLine(wiring, output, followers, moved) is { } supervised)
                yield return (WiringMeasures.EndOfLineResistor, new WiringProbe(supervised, health, alarm));
            if (open && WithEndOfLine(other, output, followers, moved) is { } both)
                yield return (WiringMeasures.NormallyClosedWithEndOfLine, new WiringProbe(both, health, alarm));
            yield return (WiringMeasures.Heartbeat, new WiringProbe(wiring, health.With(output, OutputState.Beating), alarm));
        }
    }

    private int[] Followers(OutputPattern moved)
    {
        (WiringPicture inHealth, WiringPicture after) = new WiringProbe(wiring, health, moved).Look(null);
        return [.. inHealth.Differences(after)];
    }

    private bool IsOpenInHealth(string output) => wiring.Contacts.Any(contact =>
        contact.Output == output && (health[output] == OutputState.On) != (contact.Side == ContactSide.NormallyOpen));

    private SupervisoryWiringDescription WithOtherSide(string output) => wiring with
    {
        Contacts = [.. wiring.Contacts.Select(contact => contact.Output == output ? contact with { Side = Other(contact.Side) } : contact)],
    };

    private static ContactSide Other(ContactSide side) =>
        side == ContactSide.NormallyOpen ? ContactSide.NormallyClosed : ContactSide.NormallyOpen;

    /// <summary>A resistor in series with each contact of the output and one across it; inputs that follow it look at the voltage.</summary>
    private SupervisoryWiringDescription? WithEndOfLine(SupervisoryWiringDescription bare, string output, int[] followers, OutputPattern moved)
    {
        if (followers.Any(input => bare.Inputs[input].Supervision != null))
            return null;
        WiringContact[] own = [.. bare.Contacts.Where(contact => contact.Output == output)];
        SupervisoryWiringDescription fitted = bare with
        {
            Contacts = [.. bare.Contacts.Select(contact => contact.Output == output ? contact with { From = Inner(contact) } : contact)],
            Resistors =
            [
                .. bare.Resistors,
                .. own.Select(contact => new WiringResistor(contact.Name + "/series", contact.From, Inner(contact), SeriesOhms)),
                .. own.Select(contact => new WiringResistor(contact.Name + "/across", Inner(contact), contact.To, ParallelOhms)),
            ],
            Inputs = [.. bare.Inputs.Select((input, index) => followers.Contains(index) ? input with { Supervision = Unread } : input)],
        };
        double[] before = WiringProbe.Voltages(fitted, health);
        double[] after = WiringProbe.Voltages(fitted, moved);
        return followers.Any(input => !(Math.Abs(before[input] - after[input]) > 0.1)) ? null : fitted with
        {
            Inputs = [.. fitted.Inputs.Select((input, index) => followers.Contains(index) ? input with { Supervision = Windows(before[index], after[index]) } : input)],
        };
    }

    private static string Inner(WiringContact contact) => contact.Name + "/inner";

    private static LineSupervision Windows(double beforeV, double afterV)
    {
        double half = WindowShare * Math.Abs(beforeV - afterV);
        return new LineSupervision { Ohms = BurdenOhms, Windows = [new("as-in-health", beforeV - half, beforeV + half), new("moved", afterV - half, afterV + half)] };
    }
}
