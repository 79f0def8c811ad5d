namespace LubeController.Plant.Faults.Registry;

/// <summary>Faults of the 4-20 mA loop from the pressure transmitter.</summary>
internal static class TransmitterLoopFaults
{
    private const string Differs = "a reading other than the sound one";

    internal static FaultInfo[] All { get; } =
    [
        new()
        {
            Kind = FaultKind.TransmitterLoopBroken,
            Name = "transmitter-loop-broken",
            Part = FaultPart.Transmitter,
            Place = "the pressure transmitter's loop",
            Manner = FaultManner.Off,
            Effect = "No current flows: a quarter of the range below zero.",
            Noticed = "The reading falls below zero and stays there.",
            Needs = Differs,
        },
        new()
        {
            Kind = FaultKind.TransmitterLoopShorted,
            Name = "transmitter-loop-shorted",
            Part = FaultPart.Transmitter,
            Place = "the pressure transmitter's loop",
            Manner = FaultManner.Stuck,
            Effect = "The two cores touch: as much current as the input lets through, above what a sound transmitter drives.",
            Noticed = "The reading stands beyond the end of the range.",
            Needs = Differs,
        },
        new()
        {
            Kind = FaultKind.TransmitterLoopResistive,
            Name = "transmitter-loop-resistive",
            Part = FaultPart.Transmitter,
            Place = "the pressure transmitter's loop",
            Manner = FaultManner.Wrong,
            Parameter = new("resistance", "resistance added", "ohm", 0, 1e6, 1000) { Harmless = 0 },
            Effect = "The loop has a resistance more: above the current for which the supply suffices the transmitter cannot drive it.",
            Noticed = "High pressures read too low, low ones right.",
            Needs = Differs,
        },
        new()
        {
            Kind = FaultKind.TransmitterFailsLow,
            Name = "transmitter-fails-low",
            Part = FaultPart.Transmitter,
            Place = "the pressure transmitter",
            Manner = FaultManner.Stuck,
            Effect = "The transmitter reports its own failure by a current below the valid ones of NAMUR NE 43.",
            Noticed = "The reading stands just below zero.",
            Needs = Differs,
        },
        new()
        {
            Kind = FaultKind.TransmitterFailsHigh,
            Name = "transmitter-fails-high",
            Part = FaultPart.Transmitter,
            Place = "the pressure transmitter",
            Manner = FaultManner.Stuck,
            Effect = "The transmitter reports its own failure by a current above the valid ones of NAMUR NE 43.",
            Noticed = "The reading stands beyond the end of the range.",
            Needs = Differs,
        },
    ];
}
