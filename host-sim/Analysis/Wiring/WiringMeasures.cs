using System;

namespace LubeController.Analysis.Wiring;

/// <summary>What may make a fault visible in health.</summary>
[Flags]
public enum WiringMeasures
{
    /// <summary>Nothing that was tried.</summary>
    None = 0,

    /// <summary>The other side of the contact, so that its loop is closed in health.</summary>
    NormallyClosedContact = 1,

    /// <summary>Resistors at the contact and an input that tells open, shorted, closed and opened lines apart.</summary>
    EndOfLineResistor = 2,

    /// <summary>An output that goes to and fro in health, and a supervisor that misses it.</summary>
    Heartbeat = 4,

    /// <summary>The other side of the contact and resistors at it, together.</summary>
    NormallyClosedWithEndOfLine = 8,
}
