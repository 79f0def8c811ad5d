using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Board;
using LubeController.Core;

namespace LubeController.Emulator;

/// <summary>What the core's codes are called, wherever people read of them.</summary>
public static class CoreWords
{
    /// <summary>Phases.</summary>
    public static CodeWords<Phase> Phases { get; } = new(
        new(Phase.Rest, "rest"),
        new(Phase.Dose, "dose"),
        new(Phase.RetryPause, "retry-pause"),
        new(Phase.Prime, "prime"),
        new(Phase.Stopped, "stopped"),
        new(Phase.Failed, "failed"),
        new(Phase.OutputTest, "output-test"));

    /// <summary>Steps of a dose by pressure.</summary>
    public static CodeWords<DoseStep> DoseSteps { get; } = new(
        new(DoseStep.None, "none"),
        new(DoseStep.Recharge, "recharge"),
        new(DoseStep.Pressurise, "pressurise"),
        new(DoseStep.Hold, "hold"),
        new(DoseStep.Vent, "vent"));

    /// <summary>Alarms, as the core's own table names them.</summary>
    public static CodeWords<AlarmId> Alarms { get; } =
        new([.. Enum.GetValues<AlarmId>().Select(id => new CodeWord<AlarmId>(id, AlarmTable.Spec(id).Name))]);

    /// <summary>States of an alarm.</summary>
    public static CodeWords<AlarmState> AlarmStates { get; } = new(
        new(AlarmState.Normal, "normal"),
        new(AlarmState.Unacknowledged, "unacknowledged"),
        new(AlarmState.Acknowledged, "acknowledged"),
        new(AlarmState.ReturnedUnacknowledged, "returned-unacknowledged"),
        new(AlarmState.LatchedUnacknowledged, "latched-unacknowledged"),
        new(AlarmState.LatchedAcknowledged, "latched-acknowledged"),
        new(AlarmState.Shelved, "shelved"),
        new(AlarmState.SuppressedByDesign, "suppressed-by-design"),
        new(AlarmState.OutOfService, "out-of-service"));

    /// <summary>Buttons.</summary>
    public static CodeWords<Button> Buttons { get; } = new(
        new(Button.Start, "start"),
        new(Button.Acknowledge, "acknowledge"),
        new(Button.Reset, "reset"),
        new(Button.DoseNow, "dose-now"),
        new(Button.Prime, "prime"),
        new(Button.OutputTest, "output-test"));

    /// <summary>Pairs of sensors that can disagree.</summary>
    public static CodeWords<SensorPair> SensorPairs { get; } = new(
        new(SensorPair.VolumeAndPulses, "volume and pulses"),
        new(SensorPair.PressureAndPulses, "pressure and pulses"),
        new(SensorPair.ShaftAndMachineRunning, "shaft and machine running"));

    /// <summary>What shows that a cycle switch is wrong.</summary>
    public static CodeWords<SwitchProof> SwitchProofs { get; } = new(
        new(SwitchProof.Chatter, "chatter"),
        new(SwitchProof.SecondWitness, "a second witness"));

    /// <summary>Why the board started.</summary>
    public static CodeWords<ResetCause> ResetCauses { get; } = new(
        new(ResetCause.PowerOn, "power-on"),
        new(ResetCause.BrownOut, "brown-out"),
        new(ResetCause.Watchdog, "watchdog"),
        new(ResetCause.LoopFault, "loop-fault"));

    /// <summary>Who caused what an entry of the logbook reports.</summary>
    public static CodeWords<LogSource> LogSources { get; } = new(
        new(LogSource.Controller, "controller"),
        new(LogSource.Button, "button"),
        new(LogSource.Bench, "bench"));

    /// <summary>Names of the alarms of which there is one bit each.</summary>
    /// <returns>In the order of their codes.</returns>
    public static IEnumerable<string> AlarmsOf(int bits) => Alarms.Where((_, index) => (bits & (1 << index)) != 0);
}
