using System;
using Xunit;

namespace LubeController.Core.Tests;

/// <summary>What is true after every scan, whatever happened.</summary>
internal static class Invariants
{
    public static void Hold(ScenarioRun run)
    {
        Controller core = run.Core;
        Outputs outputs = run.Outputs;
        AlarmList alarms = core.Alarms;
        bool interlock = Any(alarms, id => alarms.ActionOf(id) == AlarmAction.Interlock);
        bool stopping = Any(alarms, id => alarms.ActionOf(id) is AlarmAction.Interlock or AlarmAction.DoseEnding);
        bool holding = Any(alarms, id => alarms.ActionOf(id) == AlarmAction.Holding);
        bool failure = Any(alarms, id => alarms.CategoryOf(id) == AlarmCategory.Failure);
        bool other = Any(alarms, id => alarms.CategoryOf(id) != AlarmCategory.Failure && IsShown(alarms, id));
        bool tested = core.Phase == Phase.OutputTest;
        Assert.False(outputs.Pump && interlock, "the pump is off while an interlock stands");
        Assert.False(outputs.Pump && run.Inputs.Stop, "the pump is off while stop is on");
        bool pumpStep = !run.ByPressure || core.DoseStep is DoseStep.Pressurise or DoseStep.Hold;
        Assert.Equal(((core.Phase == Phase.Dose && pumpStep) || core.Phase == Phase.Prime) && !holding, outputs.Pump);
        bool closed = outputs.VentValve == run.VentValveNormallyOpen;
        Assert.True(run.ByPressure ? closed == outputs.Pump : !outputs.VentValve, "the vent valve is closed exactly while the pump is on");
        Assert.True(run.ByPressure || (core.DoseStep, core.PressureCycles) == (DoseStep.None, 0), "other dose modes know no steps");
        Assert.True(core.Phase == Phase.Dose || core.DoseStep is DoseStep.None or DoseStep.Vent, "only venting is kept outside a dose");
        Assert.False(tested && failure, "a failure ends the output test");
        Assert.False(interlock && core.Phase is not (Phase.Failed or Phase.Stopped), "an interlock leaves only failed and stopped");
        Assert.False(core.Phase == Phase.Failed && !stopping, "in failed a pump-stopping failure stands");
        Assert.False(core.Phase == Phase.Failed && outputs.HealthyRelay, "in failed the healthy relay is dropped");
        if (!tested)
        {
            Assert.Equal(!failure, outputs.HealthyRelay);
            Assert.Equal(other || core.Phase is Phase.Stopped or Phase.Prime, outputs.Warning);
        }

        foreach (AlarmId id in Enum.GetValues<AlarmId>())
            Assert.False(alarms.IsUnseen(id) && !IsShown(alarms, id), "what is hidden does not wait to be acknowledged");
        Assert.False(alarms.StateOf(AlarmId.LubricationOverdue) == AlarmState.SuppressedByDesign, "never suppressed");
        Assert.False(!tested && outputs.Lamp && alarms.Standing == 0 && !alarms.AnyUnseen, "the lamp is dark where nothing stands or waits");
        Assert.False(run.Inputs.Stop && core.Phase != Phase.Stopped, "stop leaves no other phase");
        Assert.Equal(interlock, alarms.InterlockStands);
        Assert.Equal(stopping, alarms.PumpStoppingStands);
        Assert.InRange(core.NextDeadlineMs, 1, int.MaxValue);
        Assert.InRange(core.NextDeadlineShaftPulses, 1, int.MaxValue);
        if (core.Phase == Phase.Dose || core.Phase == Phase.RetryPause)
            Assert.True(core.DosePending);
    }

    private static bool IsShown(AlarmList alarms, AlarmId id) =>
        alarms.StateOf(id) is not (AlarmState.Shelved or AlarmState.SuppressedByDesign or AlarmState.OutOfService);

    private static bool Any(AlarmList alarms, Func<AlarmId, bool> holds)
    {
        foreach (AlarmId id in Enum.GetValues<AlarmId>())
        {
            if (alarms.Stands(id) && holds(id))
                return true;
        }

        return false;
    }
}
