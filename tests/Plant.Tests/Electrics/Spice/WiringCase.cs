using System;
using System.Collections.Generic;
using LubeController.Plant.Wiring;

namespace LubeController.Plant.Tests.Electrics.Spice;

/// <summary>What can be wrong with one wire.</summary>
internal enum WireFault
{
    None,
    Open,
    Resistive,
    Bridged,
    ToSupply,
    ToGround,
}

/// <summary>A wiring, its outputs, and one wire that may be faulty: what both simulators are told.</summary>
internal sealed record WiringCase(SupervisoryWiringDescription Wiring, IReadOnlyList<string> Energised, WireFault Fault, int Wire, int Other, double Ohms)
{
    internal SupervisoryWiring Build()
    {
        var wiring = new SupervisoryWiring(Wiring, 1);
        for (int output = 0; output < wiring.Outputs.Count; output++)
            wiring.SetOutput(output, ((IList<string>)Energised).Contains(wiring.Outputs[output]));
        Action apply = Fault switch
        {
            WireFault.Open => () => wiring.SetWireBroken(Wire, true),
            WireFault.Resistive => () => wiring.SetWireOhms(Wire, Ohms),
            WireFault.Bridged => () => wiring.SetWireBridge(Wire, Other, Ohms),
            WireFault.ToSupply => () => wiring.SetWireToSupply(Wire, Ohms),
            WireFault.ToGround => () => wiring.SetWireToGround(Wire, Ohms),
            _ => () => { }
            ,
        };
        apply();
        return wiring;
    }

    public override string ToString() =>
        $"energised [{string.Join(", ", Energised)}], {Fault} {(Fault == WireFault.None ? "" : Wiring.Wires[Wire].Name)} {(Fault == WireFault.Bridged ? Wiring.Wires[Other].Name : "")} {Ohms} ohm";
}
