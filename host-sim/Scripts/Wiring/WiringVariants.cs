using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Plant.Electrics.Supplies;
using LubeController.Plant.Electrics.Wiring;

namespace LubeController.Scripts.Wiring;

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

    private readonly (WiringPicture Health, WiringPicture Alarm) _sound = new WiringProbe(wiring, health, alarm).Look(null);

    /// <summary>The outputs whose contact tells this alarm, in order of mention.</summary>
    public IReadOnlyList<string> Tellers { get; } =
        [.. wiring.Contacts.Select(contact => contact.Output).Distinct(StringComparer.Ordinal).Where(output => health[output] != alarm[output])];

    /// <summary>Each measure that can be tried on an output, ready to be probed.</summary>
    public IEnumerable<(WiringMeasures Measure, WiringProbe Probe)> Of(string output)
    {
        if (IsOpenInHealth(output))
            yield return (WiringMeasures.NormallyClosedContact, new WiringProbe(WithOtherSide(output), health, alarm));
        if (WithEndOfLine(output) is { } supervised)
            yield return (WiringMeasures.EndOfLineResistor, new WiringProbe(supervised, health, alarm));
        if (health[output] != OutputState.Beating)
            yield return (WiringMeasures.Heartbeat, new WiringProbe(wiring, health.WithBeating(output), alarm));
    }

    private bool IsOpenInHealth(string output) => wiring.Contacts.Any(contact =>
        contact.Output == output && health[output] != OutputState.Beating && (health[output] == OutputState.On) != (contact.Side == ContactSide.NormallyOpen));

    private SupervisoryWiringDescription WithOtherSide(string output) => wiring with
    {
        Contacts = [.. wiring.Contacts.Select(contact => contact.Output != output ? contact : contact with { Side = Other(contact.Side) })],
    };

    private static ContactSide Other(ContactSide side) =>
        side == ContactSide.NormallyOpen ? ContactSide.NormallyClosed : ContactSide.NormallyOpen;

    /// <summary>A resistor in series with each contact of the output and one across it; inputs that followed it look at the voltage.</summary>
    private SupervisoryWiringDescription? WithEndOfLine(string output)
    {
        int[] followers = [.. _sound.Health.Differences(_sound.Alarm)];
        if (followers.Length == 0 || followers.Any(input => wiring.Inputs[input].Supervision != null))
            return null;
        WiringContact[] own = [.. wiring.Contacts.Where(contact => contact.Output == output)];
        SupervisoryWiringDescription fitted = wiring with
        {
            Contacts = [.. wiring.Contacts.Select(contact => contact.Output == output ? contact with { From = Inner(contact) } : contact)],
            Resistors =
            [
                .. wiring.Resistors,
                .. own.Select(contact => new WiringResistor(contact.Name + "/series", contact.From, Inner(contact), SeriesOhms)),
                .. own.Select(contact => new WiringResistor(contact.Name + "/across", Inner(contact), contact.To, ParallelOhms)),
            ],
            Inputs = [.. wiring.Inputs.Select((input, index) => followers.Contains(index) ? input with { Supervision = Plain } : input)],
        };
        var inHealth = Voltages(fitted, health);
        var inAlarm = Voltages(fitted, alarm);
        return followers.Any(input => !(Math.Abs(inHealth[input] - inAlarm[input]) > 0.1)) ? null : fitted with
        {
            Inputs = [.. fitted.Inputs.Select((input, index) => followers.Contains(index) ? input with { Supervision = Windows(inHealth[index], inAlarm[index]) } : input)],
        };
    }

    private static string Inner(WiringContact contact) => contact.Name + "/inner";

    private static LineSupervision Plain { get; } = new() { Ohms = BurdenOhms, Windows = [new("any", -100, 100)] };

    private static LineSupervision Windows(double healthV, double alarmV)
    {
        double half = WindowShare * Math.Abs(healthV - alarmV);
        return new LineSupervision { Ohms = BurdenOhms, Windows = [new("health", healthV - half, healthV + half), new("alarm", alarmV - half, alarmV + half)] };
    }

    private static double[] Voltages(SupervisoryWiringDescription description, OutputPattern pattern)
    {
        var circuit = new SupervisoryWiring(description, 1);
        for (int output = 0; output < circuit.Outputs.Count; output++)
            circuit.SetOutput(output, pattern[circuit.Outputs[output]] == OutputState.On);
        return [.. Enumerable.Range(0, description.Inputs.Count).Select(circuit.InputV)];
    }
}
