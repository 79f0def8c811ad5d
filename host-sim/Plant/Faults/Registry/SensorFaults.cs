namespace LubeController.Plant.Faults.Registry;

/// <summary>Faults of switches, gauge, transmitter and their wires.</summary>
internal static class SensorFaults
{
    private const string Differs = "a level other than the sound one";

    internal static FaultInfo[] All { get; } =
    [
        new()
        {
            Kind = FaultKind.LevelSwitchStuckOn,
            Name = "level-switch-stuck-on",
            Part = FaultPart.LevelSwitch,
            Place = "the level switch",
            Manner = FaultManner.Stuck,
            Effect = "The level switch reads on, whatever the content.",
            Noticed = "Its lamp is on although the sight glass shows another level.",
            Needs = Differs,
        },
        new()
        {
            Kind = FaultKind.LevelSwitchStuckOff,
            Name = "level-switch-stuck-off",
            Part = FaultPart.LevelSwitch,
            Place = "the level switch",
            Manner = FaultManner.Stuck,
            Effect = "The level switch reads off, whatever the content.",
            Noticed = "Nothing, until the reservoir is found low or empty without a word.",
            Needs = Differs,
        },
        new()
        {
            Kind = FaultKind.CycleSwitchStuckOn,
            Name = "cycle-switch-stuck-on",
            Part = FaultPart.CycleSwitch,
            Place = "the cycle switch",
            Manner = FaultManner.Stuck,
            Effect = "The cycle switch reads on, wherever its piston is.",
            Noticed = "Its lamp stays on while the stroke indicator moves.",
            Needs = Differs,
        },
        new()
        {
            Kind = FaultKind.CycleSwitchStuckOff,
            Name = "cycle-switch-stuck-off",
            Part = FaultPart.CycleSwitch,
            Place = "the cycle switch",
            Manner = FaultManner.Stuck,
            Effect = "The cycle switch reads off, wherever its piston is.",
            Noticed = "Its lamp stays off while the stroke indicator moves.",
            Needs = Differs,
        },
        new()
        {
            Kind = FaultKind.CycleSwitchChattering,
            Name = "cycle-switch-chattering",
            Part = FaultPart.CycleSwitch,
            Place = "the cycle switch",
            Manner = FaultManner.Intermittent,
            Parameter = new("period", "mean time between changes", "s", 1e-4, 60, 0.2),
            Effect = "The cycle switch toggles at irregular intervals, wherever its piston is.",
            Noticed = "Its lamp flickers, with the piston at rest too.",
            Needs = Differs,
        },
        new()
        {
            Kind = FaultKind.CycleSwitchWireBroken,
            Name = "cycle-switch-wire-broken",
            Part = FaultPart.CycleSwitch,
            Place = "the cycle switch's wire",
            Manner = FaultManner.Off,
            Effect = "No current reaches the far end of the wire: it reads off, whatever the contact does.",
            Noticed = "The lamp at the cabinet stays off while the stroke indicator moves.",
            Needs = Differs,
        },
        new()
        {
            Kind = FaultKind.CycleSwitchWireLoose,
            Name = "cycle-switch-wire-loose",
            Part = FaultPart.CycleSwitch,
            Place = "the cycle switch's wire",
            Manner = FaultManner.Intermittent,
            Parameter = new("off-time", "mean time for which it is interrupted", "s", 1e-4, 3600, 0.05),
            Second = new("on-time", "mean time for which it is whole", "s", 1e-4, 3600, 2),
            Effect = "The wire is interrupted and whole again at irregular intervals, as under vibration.",
            Noticed = "The lamp at the cabinet flickers while the machine shakes, though the switch itself is steady.",
            Needs = Differs,
        },
        new()
        {
            Kind = FaultKind.ShaftSwitchLost,
            Name = "shaft-switch-lost",
            Part = FaultPart.Shaft,
            Place = "the shaft switch",
            Manner = FaultManner.Off,
            Effect = "The shaft switch gives no pulses, however the shaft turns.",
            Noticed = "Its lamp does not blink while the shaft turns.",
            Needs = "a pulse that the sound switch would have given",
            Healing = FaultHealing.LeavesTraces,
            HealingNote = "Pulses come again; those missed stay missed.",
        },
        new()
        {
            Kind = FaultKind.PressureSwitchStuckOn,
            Name = "pressure-switch-stuck-on",
            Part = FaultPart.PressureSwitch,
            Place = "the pressure switch",
            Manner = FaultManner.Stuck,
            Effect = "The pressure switch reads on, whatever the pressure.",
            Noticed = "Its lamp is on while the gauge stands at zero.",
            Needs = Differs,
        },
        new()
        {
            Kind = FaultKind.PressureSwitchStuckOff,
            Name = "pressure-switch-stuck-off",
            Part = FaultPart.PressureSwitch,
            Place = "the pressure switch",
            Manner = FaultManner.Stuck,
            Effect = "The pressure switch reads off, whatever the pressure.",
            Noticed = "Its lamp stays off while the gauge stands high.",
            Needs = Differs,
        },
        new()
        {
            Kind = FaultKind.GaugeWrong,
            Name = "gauge-wrong",
            Part = FaultPart.Gauge,
            Place = "the pressure gauge",
            Manner = FaultManner.Wrong,
            Parameter = new("offset", "pressure added to what it shows", "Pa", -4e7, 4e7, 1e6) { Harmless = 0 },
            Effect = "The gauge shows another pressure than there is.",
            Noticed = "Its pointer does not return to zero when the line is relieved.",
            Needs = "a reading other than the sound one",
        },
        new()
        {
            Kind = FaultKind.TransmitterWrong,
            Name = "transmitter-wrong",
            Part = FaultPart.Transmitter,
            Place = "the pressure transmitter",
            Manner = FaultManner.Wrong,
            Parameter = new("offset", "pressure added to what it tells", "Pa", -4e7, 4e7, 1e6) { Harmless = 0 },
            Effect = "The transmitter tells another pressure than there is.",
            Noticed = "Its reading and the gauge do not agree.",
            Needs = "a reading other than the sound one",
        },
        new()
        {
            Kind = FaultKind.TransmitterLagging,
            Name = "transmitter-lagging",
            Part = FaultPart.Transmitter,
            Place = "the pressure transmitter",
            Manner = FaultManner.Slow,
            Parameter = new("time-constant", "time constant of its lag", "s", 0, 600, 5) { Harmless = 0 },
            Effect = "The transmitter follows the pressure late, as of a clogged tapping.",
            Noticed = "Its reading creeps after the gauge.",
            Needs = "a reading other than the sound one",
        },
    ];
}
