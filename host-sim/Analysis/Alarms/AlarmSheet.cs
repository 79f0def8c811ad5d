using System;
using System.Collections.Generic;
using LubeController.Core;
using LubeController.Emulator;

namespace LubeController.Analysis.Alarms;

/// <summary>What people are told of an alarm beside its fixed facts. What to do is common practice, without a source.</summary>
/// <param name="Id">The alarm.</param>
/// <param name="RaisedWhen">Its cause, as <c>firmware/PHASES.md</c> has it.</param>
/// <param name="WhatToDo">What a person should do.</param>
public sealed record AlarmSheet(AlarmId Id, string RaisedWhen, string WhatToDo)
{
    /// <summary>Shown wherever people are told what to do.</summary>
    public const string Caution =
        "Isolate and lock out the machine and relieve the line of pressure before opening anything; lubricant under pressure goes through skin. "
        + "Keep clear of what moves. Local codes and licensed practice come first. This is not a safety function.";

    /// <summary>Every alarm, in the order of its number.</summary>
    public static IReadOnlyList<AlarmSheet> All { get; } =
    [
        new(
            AlarmId.DividerStalled,
            "a switch's timeout ended with no retries left",
            "Read the line pressure while the pump runs: hold prime, or reset and press dose-now. High up to the relief valve: an outlet, line or bearing is blocked; find the piston that does not move, then open one outlet after the other, the machine isolated and the line relieved of pressure each time, and let the pump run again until it moves. Low: look for lubricant, an open line, a worn pump or air. Pistons that move without a pulse: the switch or its wire. Then reset."),
        new(
            AlarmId.DoseTooLong,
            "the pump-on time of one dose reached dose-limit",
            "Pulses come, but too slowly or too few: compare their interval with that of earlier doses. A worn pump, a leak before the divider, cold stiff lubricant, or a dose-limit set too short. Then reset."),
        new(
            AlarmId.LinePressureMissing,
            "the pump ran in doses for pressure-missing-time without line pressure; priming an empty line is not judged",
            "Look for lubricant in the reservoir, a burst or open line, air, a relief valve that stays open, a pump that does not turn, and at the pressure sensor itself. Hold prime until pressure shows, then reset."),
        new(
            AlarmId.LineOverpressure,
            "the pressure is above pressure-limit, or the limit switch is on",
            "Keep the pump off. Look for a blocked outlet or line, frozen or stiff lubricant, a vent valve that does not open, and check the relief valve. Relieve the pressure before anything is opened: grease at such pressure goes through skin. Then reset."),
        new(
            AlarmId.ReservoirEmpty,
            "the empty switch is on",
            "Refill with the right lubricant, clean, and find out why reservoir-low was not heeded. Vent the pump. Reset once the level switch shows lubricant; then, before the restart delay is over, hold prime until lubricant without air comes."),
        new(
            AlarmId.SettingsInvalid,
            "the settings were refused",
            "Read which setting was refused and why, store good settings, then reset. If neither bank could be read, store the settings anew and have the memory looked at."),
        new(
            AlarmId.CycleSwitchFault,
            "chatter, or as many pulses of another switch as witness-pulses says and none of this one",
            "Watch the switch at the divider while pistons move, in prime if a dose has ended by it: its distance, its wire, moisture in the connector. Exchange it if it chatters at rest. Reset only once it works, since reset believes it again."),
        new(
            AlarmId.PulseWhileIdle,
            "a pulse came after the run-on time with the pump off",
            "Something moves the divider while the pump should rest: a contactor that is welded, a pump that runs on by hand, pressure that leaks back into the line, or run-on-time set too short. Look whether the pump turns; isolate it if it does. Then reset."),
        new(
            AlarmId.LubricationOverdue,
            "no dose was completed within overdue-limit",
            "The bearings have had nothing for too long. See which other alarm stands and deal with that first, or why the machine's or the shaft's signal holds the rest; ask whoever answers for the machine whether it may run on. Once the phase is neither failed nor stopped give a dose with dose-now. It ends with the next completed dose."),
        new(
            AlarmId.ShaftSignalLost,
            "no shaft pulse for shaft-lost-time of running time, which short runs add up to, over power cuts too; the machine runs",
            "Look at the shaft switch: distance, wire, target. Until it is mended doses come by the fallback time."),
        new(
            AlarmId.RuleFault,
            "the rest rule threw, answered out of range, or let a rest run beyond rule-longest-rest",
            "The rule of your own threw, answered out of range or ran too long: doses come by the fallback time. Replay its script on the bench with the inputs of that time, mend it, then reset."),
        new(
            AlarmId.PulseTooFast,
            "pulses closer than shortest-pulse-interval",
            "Pulses came faster than the pump can cause: a switch that bounces, a wire beside a drive, vibration, or a debounce or shortest interval set wrong. Mend the cause, then reset."),
        new(
            AlarmId.ReservoirLow,
            "the low switch is on",
            "Refill with the right lubricant before it runs empty, and look for leaks if it is early. It ends by itself."),
        new(
            AlarmId.LineNotVented,
            "a dose by pressure waited for vent-limit for the line to stand vented",
            "The line kept its pressure after a dose: look at the vent valve and its wire, at a blocked return, at stiff lubricant, and at the pressure sensor. Relieve the pressure before anything is opened. Then reset."),
        new(
            AlarmId.PumpOverload,
            "the overload contact is on, or the pump was on for pump-revolution-missing-time without a revolution, which short runs add up to",
            "Find out why the motor was overloaded or the pump stood still: stiff or frozen lubricant, a blocked line, a seized pump, a broken coupling or revolution sensor, a lost phase of the supply. Let it cool, put the overload relay back, then reset."),
        new(
            AlarmId.LogicFault,
            "the main loop caught an exception: outputs safe, recorded, board restarted",
            "The control logic failed and the board restarted with its outputs off. Keep the logbook, replay what happened on the bench, load mended logic; if it comes again exchange the board. Then reset."),
        new(
            AlarmId.ScanOverrun,
            "scans come more than scan-limit later than due",
            "The controller was too slow: a rule that takes too long, a memory that writes slowly, or too much else on the same processor. Look at the logbook for what went before, then reset."),
        new(
            AlarmId.LubricantCold,
            "the lubricant is colder than cold-limit",
            "Expect slow and stiff doses: heat the reservoir or the line, or change to a softer grade for the season. It ends by itself."),
        new(
            AlarmId.SupplyLow,
            "the supply is below supply-limit",
            "Nothing is believed and the pump is held until the supply is back: look at the power supply unit, its load when the pump starts, and long thin wires. It ends by itself."),
        new(
            AlarmId.StorageCorrupt,
            "a block of the memory other than the settings lost its check value, or a save was refused",
            "A block of the memory was damaged and left out, what it held is in the older copy or gone; or the memory takes no more writes, and what it keeps is old. See the logbook and the counters, then reset; if it comes again the memory is worn: exchange the board before its power is cut."),
        new(
            AlarmId.RestartUnexpected,
            "more restarts than restarts-most within restart-window, or two power-ups closer than save-interval",
            "The supply was interrupted more often than expected: look at its contacts, at a switch that cuts the controller with the machine, and at a board that restarts itself. Then reset."),
        new(
            AlarmId.SensorsDisagree,
            "two sensors say what cannot both be true: see below",
            "Two sensors say what cannot both be true; the logbook names the two. Check each against the machine: does the piston move, does the gauge show pressure, does the shaft turn. Mend the one that is wrong, then reset.")
        {
            Below = "volume and pulses, where what was pumped over volume-window cycles and what these cycles take are further apart than volume-tolerance; pressure and pulses, where as many pulses in a row as pulses-without-pressure says came with the pump on and pressure not reached; or shaft and machine running, where the shaft still turns after run-down-time without machine running",
        },
        new(
            AlarmId.PressureSignalLost,
            "the transmitter gives what stands for less than 3.6 or more than 21 mA (NAMUR NE 43), with pressure-span set",
            "The transmitter's current is outside what its maker allows: a broken or shorted loop, no supply, or a failed transmitter. Nothing guards the line's pressure by it meanwhile. Mend it, then reset."),
    ];

    private const string SeeBelow = "see below";

    /// <summary>What the page tells below its table, where the cause refers to it; else empty.</summary>
    public string Below { get; init; } = "";

    /// <summary>Its cause in full, for where nothing stands below.</summary>
    public string Cause => RaisedWhen.Replace(SeeBelow, Below, StringComparison.Ordinal);

    /// <summary>The name users see.</summary>
    public string Name => AlarmTable.Spec(Id).Name;

    /// <summary>How it acts, in words.</summary>
    public string Acts => AlarmTable.Spec(Id).Action switch
    {
        AlarmAction.Interlock => "interlock: the pump is off while it stands, phase failed",
        AlarmAction.DoseEnding => "dose-ending: the dose fails, phase failed",
        AlarmAction.Holding => "holding: the pump is off while it stands, the dose waits",
        _ => Id == AlarmId.CycleSwitchFault ? "none; dose-ending for the dose-ending switch" : "none: it only informs",
    };

    /// <summary>Its category by NAMUR NE 107, in words.</summary>
    public string Category => AlarmTable.Spec(Id).Category switch
    {
        AlarmCategory.Failure => "failure",
        AlarmCategory.MaintenanceRequired => "maintenance required",
        _ => Id switch
        {
            AlarmId.CycleSwitchFault => "out of specification; failure for the dose-ending switch",
            AlarmId.SensorsDisagree => "out of specification; failure where nothing guards the pressure any more",
            _ => "out of specification",
        },
    };

    /// <summary>Whether it stands until reset.</summary>
    public bool Latches => AlarmTable.Spec(Id).Latches;

    /// <summary>The setting of its delay on; where it takes none the longest is 0.</summary>
    public SettingSpec DelayOn => SettingTable.Spec(SettingField.DelayOn(Id));

    /// <summary>The setting of its delay off.</summary>
    public SettingSpec DelayOff => SettingTable.Spec(SettingField.DelayOff(Id));

    /// <summary>The alarms that hide it as their consequence.</summary>
    public IEnumerable<string> SuppressedBy => CoreWords.AlarmsOf(AlarmTable.Spec(Id).Causes);
}
