namespace LubeController.Core;

/// <summary>The output image of one scan. Made once; the board copies it to the pins after every scan.</summary>
public sealed class Outputs
{
    /// <summary>Pump contact.</summary>
    public bool Pump { get; internal set; }

    /// <summary>
    /// Contact of the vent valve, energised: the valve is then closed if the setting vent-valve-normally-open is yes,
    /// else open. Off where doses do not end by pressure.
    /// </summary>
    public bool VentValve { get; internal set; }

    /// <summary>Healthy relay: energised while no failure stands, so that power loss and a broken wire alarm too (fail-safe output, IEC 60204-1).</summary>
    public bool HealthyRelay { get; internal set; }

    /// <summary>Warning output: any other alarm stands, or the phase is stopped or prime.</summary>
    public bool Warning { get; internal set; }

    /// <summary>Lamp: flashes while an alarm is not acknowledged, is steady while an acknowledged one stands, else dark.</summary>
    public bool Lamp { get; internal set; }

    /// <summary>The safe state: everything off, the healthy relay dropped, the vent valve without power.</summary>
    public void MakeSafe()
    {
        Pump = false;
        VentValve = false;
        HealthyRelay = false;
        Warning = false;
        Lamp = false;
    }

    internal void Transfer(StateStream stream)
    {
        Pump = stream.Flag(Pump);
        VentValve = stream.Flag(VentValve);
        HealthyRelay = stream.Flag(HealthyRelay);
        Warning = stream.Flag(Warning);
        Lamp = stream.Flag(Lamp);
    }
}
