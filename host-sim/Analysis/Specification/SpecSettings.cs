using System.Collections.Generic;

namespace LubeController.Analysis.Specification;

/// <summary>What ends a rest.</summary>
public enum RestMode
{
    /// <summary>Elapsed time.</summary>
    Time,

    /// <summary>Shaft revolutions, counted in shaft pulses; elapsed time when their signal is lost.</summary>
    Shaft,

    /// <summary>Elapsed time or shaft revolutions, whichever comes first.</summary>
    Either,
}

/// <summary>What ends a dose.</summary>
public enum DoseMode
{
    /// <summary>A number of pulses of the dose-ending switch.</summary>
    Cycles,

    /// <summary>Pump-on time, unmonitored.</summary>
    RunTime,

    /// <summary>Line pressure reached, held and vented, a number of times, on a single-line system with a vent valve.</summary>
    Pressure,
}

/// <summary>What a pressure switch shows when on.</summary>
public enum PressureSwitchUse
{
    /// <summary>None is fitted.</summary>
    Nothing,

    /// <summary>That line pressure is reached.</summary>
    Reached,

    /// <summary>That line pressure is above its limit.</summary>
    Limit,
}

/// <summary>One monitored cycle switch.</summary>
/// <param name="TimeoutMs">Pump-on time within which its next pulse must come, ms, at least 1.</param>
/// <param name="Retries">Retries after a timeout, 0 upward.</param>
/// <param name="BothEdges">Whether both edges are pulses (half cycles), or the off-to-on edge alone (full cycles).</param>
/// <param name="DebounceMs">Debounce of its own, ms, 0 upward; null for that of all.</param>
public sealed record SwitchSettings(int TimeoutMs, int Retries, bool BothEdges = false, int? DebounceMs = null);

/// <summary>The delays of one alarm, ms, 0 upward.</summary>
/// <param name="OnMs">How long the condition must be there before the alarm is raised.</param>
/// <param name="OffMs">How long it must be gone before the alarm counts it as ended.</param>
public readonly record struct AlarmDelays(int OnMs, int OffMs);

/// <summary>One alarm that is suppressed by design while another stands.</summary>
/// <param name="Alarm">The consequence.</param>
/// <param name="Cause">Its cause.</param>
public readonly record struct Consequence(AlarmId Alarm, AlarmId Cause);

/// <summary>All settings. Durations are in ms. <see cref="LubricationSpecification"/> refuses what makes no sense.</summary>
public sealed record SpecSettings
{
    /// <summary>What ends a rest.</summary>
    public RestMode RestMode { get; init; } = RestMode.Time;

    /// <summary>Elapsed time of a full rest, ms, at least 1.</summary>
    public int RestMs { get; init; } = 600_000;

    /// <summary>Shaft pulses of a full rest, at least 1.</summary>
    public int RestShaftPulses { get; init; } = 1000;

    /// <summary>Elapsed time that ends a rest while <c>shaft-signal-lost</c> is active, ms, at least 1.</summary>
    public int FallbackMs { get; init; } = 900_000;

    /// <summary>Whether rest, time and revolutions, counts only while the machine is running.</summary>
    public bool RestOnlyWhileRunning { get; init; }

    /// <summary>The wait before an interrupted dose resumes, and the rest where no valid state is found, ms.</summary>
    public int RestartDelayMs { get; init; } = 10_000;

    /// <summary>Whether doses are tried again in the phase failed.</summary>
    public bool NewTries { get; init; }

    /// <summary>The wait in failed before a dose is tried again, ms.</summary>
    public int NewTryDelayMs { get; init; } = 10_000;

    /// <summary>Whether a shaft input is fitted.</summary>
    public bool HasShaft { get; init; }

    /// <summary>Time without a shaft pulse after which it is lost if the machine runs, ms.</summary>
    public int ShaftTimeoutMs { get; init; } = 60_000;

    /// <summary>Time without a shaft pulse after which it says standstill, ms.</summary>
    public int ShaftStandstillMs { get; init; } = 60_000;

    /// <summary>Longest time for which the shaft may turn on after machine running has gone off, ms; 0 judges none.</summary>
    public int RunDownMs { get; init; }

    /// <summary>What ends a dose.</summary>
    public DoseMode DoseMode { get; init; } = DoseMode.Cycles;

    /// <summary>Pulses of a dose, 1 upward.</summary>
    public int DosePulses { get; init; } = 1;

    /// <summary>Pump-on time of an unmonitored dose, ms, at least 1.</summary>
    public int DoseRunMs { get; init; } = 10_000;

    /// <summary>Pump-on time of one dose beyond which it is too long, ms.</summary>
    public int DoseLimitMs { get; init; } = 300_000;

    /// <summary>The monitored switches, none to four; a dose by cycles needs one.</summary>
    public IReadOnlyList<SwitchSettings> Switches { get; init; } = [new SwitchSettings(30_000, 1)];

    /// <summary>Which of them ends the dose.</summary>
    public int DoseEndingSwitch { get; init; }

    /// <summary>Pump-on time that the first pulse may take beyond the dose-ending switch's timeout, ms.</summary>
    public int FirstPulseAllowanceMs { get; init; } = 5_000;

    /// <summary>Pulses of one direction closer than this come faster than the pump can cause, ms; 0 judges none.</summary>
    public int ShortestPulseIntervalMs { get; init; }

    /// <summary>Pulses of one switch without any of another that prove the other wrong; 0 judges none.</summary>
    public int WitnessPulses { get; init; }

    /// <summary>Changes of a switch's level in one window that show chatter; 0 judges none.</summary>
    public int ChatterChanges { get; init; }

    /// <summary>Length of that window, ms.</summary>
    public int ChatterWindowMs { get; init; } = 2_000;

    /// <summary>Pause before a retry, ms, at least 1.</summary>
    public int RetryPauseMs { get; init; } = 5_000;

    /// <summary>Time after the pump has gone off in which a pulse is still its doing, ms.</summary>
    public int RunOnMs { get; init; } = 2_000;

    /// <summary>How long prime may run, ms, at least 1.</summary>
    public int PrimeLimitMs { get; init; } = 120_000;

    /// <summary>How long an output test runs, ms, at least 1.</summary>
    public int OutputTestMs { get; init; } = 10_000;

    /// <summary>Powered time without a completed dose after which lubrication is overdue, ms, at least 1.</summary>
    public int OverdueMs { get; init; } = 3_600_000;

    /// <summary>Powered time that a power-up is to last at least, ms: a shorter one may save nothing.</summary>
    public int SaveIntervalMs { get; init; } = 60_000;

    /// <summary>Power-ups within <see cref="RestartWindowMs"/> that are still expected; 0 judges none, nor how short one was.</summary>
    public int RestartsMost { get; init; }

    /// <summary>Powered time within which power-ups are counted, ms, from the first of them.</summary>
    public int RestartWindowMs { get; init; } = 3_600_000;

    /// <summary>Pressure above which the line is overpressured, Pa; null where no transmitter is fitted.</summary>
    public int? OverpressurePa { get; init; }

    /// <summary>Pressure from which the transmitter shows that line pressure is reached, Pa.</summary>
    public int PressureReachedPa { get; init; } = 10_000_000;

    /// <summary>Pressure up to which the transmitter shows that the line is vented, Pa.</summary>
    public int PressureVentedPa { get; init; } = 1_000_000;

    /// <summary>Pressure at 20 mA of the transmitter, Pa; 0 judges no lost signal.</summary>
    public int PressureSpanPa { get; init; }

    /// <summary>What the pressure switch shows.</summary>
    public PressureSwitchUse PressureSwitchUse { get; init; }

    /// <summary>Debounce of the pressure switch, ms.</summary>
    public int PressureDebounceMs { get; init; }

    /// <summary>Pump-on time in doses without line pressure after which it is missing, ms; 0 judges none.</summary>
    public int PressureMissingMs { get; init; }

    /// <summary>How long pressure must last in a dose by pressure, ms.</summary>
    public int HoldMs { get; init; } = 5_000;

    /// <summary>How long the line must stand vented, ms.</summary>
    public int VentMs { get; init; } = 30_000;

    /// <summary>Longest venting, ms.</summary>
    public int VentLimitMs { get; init; } = 120_000;

    /// <summary>Pressure cycles of a dose by pressure, 1 upward.</summary>
    public int PressureCycles { get; init; } = 1;

    /// <summary>Whether the vent valve is open without power.</summary>
    public bool VentValveNormallyOpen { get; init; } = true;

    /// <summary>Pump-on time without a revolution after which the pump counts as overloaded, ms; null where none are counted.</summary>
    public int? RevolutionMissingMs { get; init; }

    /// <summary>Temperature below which the lubricant is cold, thousandths of a degree Celsius; null for no sensor.</summary>
    public int? ColdMilliCelsius { get; init; }

    /// <summary>Supply voltage below which the supply is low, mV; null where it is not measured.</summary>
    public int? SupplyLowMilliVolt { get; init; }

    /// <summary>How far above their limits temperature, thousandths of a kelvin, must come back.</summary>
    public int ColdHysteresisMilliKelvin { get; init; }

    /// <summary>How far above its limit the supply must come back, mV.</summary>
    public int SupplyHysteresisMilliVolt { get; init; }

    /// <summary>The wait before the cycle switches' levels are taken as a baseline, ms.</summary>
    public int ReadyDelayMs { get; init; } = 300;

    /// <summary>Debounce of the cycle switches that have none of their own, ms.</summary>
    public int SwitchDebounceMs { get; init; } = 20;

    /// <summary>Debounce of reservoir low and empty, ms.</summary>
    public int LevelDebounceMs { get; init; } = 500;

    /// <summary>Debounce of the overload contact, ms.</summary>
    public int OverloadDebounceMs { get; init; } = 50;

    /// <summary>Debounce of the operating stop, ms.</summary>
    public int StopDebounceMs { get; init; } = 20;

    /// <summary>Debounce of machine running, ms.</summary>
    public int MachineRunningDebounceMs { get; init; } = 100;

    /// <summary>Debounce of the buttons, ms.</summary>
    public int ButtonDebounceMs { get; init; } = 30;

    /// <summary>The delays of alarms that have any. The running dose's own timeouts take none: they are delays already.</summary>
    public IReadOnlyDictionary<AlarmId, AlarmDelays> Delays { get; init; } = new Dictionary<AlarmId, AlarmDelays>();

    /// <summary>Which alarms are suppressed as consequences of which; never <c>lubrication-overdue</c>.</summary>
    public IReadOnlyList<Consequence> Consequences { get; init; } = [new Consequence(AlarmId.ReservoirLow, AlarmId.ReservoirEmpty)];
}
