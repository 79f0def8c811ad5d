using System.Linq;
using LubeController.Plant.Wiring;

namespace LubeController.Analysis.Wiring;

/// <summary>Puts a wiring through health and an alarm, with or without a fault, and says what the supervisor sees of each.</summary>
/// <param name="wiring">The wiring.</param>
/// <param name="health">What the outputs do in health.</param>
/// <param name="alarm">What the outputs do in the alarm.</param>
internal sealed class WiringProbe(SupervisoryWiringDescription wiring, OutputPattern health, OutputPattern alarm)
{
    /// <summary>What is seen in health, then in the alarm: in that order, since a fuse that blew stays blown.</summary>
    public (WiringPicture Health, WiringPicture Alarm) Look(WiringFaultCase? fault)
    {
        var circuit = new SupervisoryWiring(wiring, 1);
        Set(circuit, health);
        // A relay that has pulled in holds at a voltage at which it would not pull in: health comes first, then the fault.
        circuit.Read();
        fault?.Fault.Apply(circuit, fault.Part);
        var inHealth = WiringPicture.Of(circuit);
        Set(circuit, alarm);
        return (inHealth, WiringPicture.Of(circuit));
    }

    /// <summary>Voltage across each input of sound wiring, V.</summary>
    public static double[] Voltages(SupervisoryWiringDescription wiring, OutputPattern pattern)
    {
        SupervisoryWiring circuit = Sound(wiring, pattern);
        return [.. Enumerable.Range(0, wiring.Inputs.Count).Select(circuit.InputV)];
    }

    /// <summary>Sound wiring with its outputs in place.</summary>
    public static SupervisoryWiring Sound(SupervisoryWiringDescription wiring, OutputPattern pattern)
    {
        var circuit = new SupervisoryWiring(wiring, 1);
        Set(circuit, pattern);
        return circuit;
    }

    private static void Set(SupervisoryWiring circuit, OutputPattern pattern)
    {
        for (int output = 0; output < circuit.Outputs.Count; output++)
        {
            OutputState state = pattern[circuit.Outputs[output]];
            if (state == OutputState.Beating)
                circuit.SetOutputBeating(output);
            else
                circuit.SetOutput(output, state == OutputState.On);
        }
    }
}
