using System;
using Stateless;
using static LubeController.Analysis.Specification.Phase;
using static LubeController.Analysis.Specification.PhaseEvent;

namespace LubeController.Analysis.Specification;

/// <summary>
/// The phase table of the control rules as one Stateless machine, column by column: what is not named changes nothing, and a
/// refused press is logged and does nothing else. One cell is safer than the rules' own: an interlock that comes in prime leads
/// back to stopped where prime was pressed there, since by way of failed and a reset the operating stop would be taken off
/// without a start. Where stop or an interlock comes in the scan of a press or of the end of a rest, the pump is not started for
/// that scan.
/// </summary>
internal sealed class PhaseMachine
{
    private const string StopOffNoInterlock = "stop off, no interlock stands";
    private const string StopOnOrInterlock = "stop on, or an interlock stands";
    private const string NoFailureAnyMore = "no pump-stopping failure stands any more";
    private const string FailureStands = "a pump-stopping failure stands";

    private readonly StateMachine<Phase, PhaseEvent> _machine;
    private readonly PhaseFacts _facts;
    private readonly Action<PhaseEvent> _refuse;

    private PhaseMachine(StateMachine<Phase, PhaseEvent> machine, PhaseFacts facts, Action<PhaseEvent> refuse)
    {
        _machine = machine;
        _facts = facts;
        _refuse = refuse;
    }

    /// <summary>Builds the machine.</summary>
    /// <param name="get">Reads the phase, which is kept outside.</param>
    /// <param name="set">Writes it.</param>
    /// <param name="facts">What the guards ask.</param>
    /// <param name="refuse">Called when a press is refused.</param>
    internal static StateMachine<Phase, PhaseEvent> Build(Func<Phase> get, Action<Phase> set, PhaseFacts facts, Action<PhaseEvent> refuse)
    {
        var machine = new StateMachine<Phase, PhaseEvent>(get, set, FiringMode.Immediate);
        machine.OnUnhandledTrigger((_, _) => { });
        var table = new PhaseMachine(machine, facts, refuse);
        table.ConfigureRest();
        table.ConfigureDose();
        table.ConfigureRetryPause();
        table.ConfigurePrime();
        table.ConfigureStopped();
        table.ConfigureFailed();
        table.ConfigureOutputTest();
        return machine;
    }

    private void ConfigureRest()
    {
        _machine.Configure(Rest)
            .PermitIf(DoseDue, Dose, MayStart, StopOffNoInterlock)
            .Permit(Interlock, Failed)
            .Permit(StopOn, Stopped)
            .PermitIf(DoseNowPressed, Dose, MayStart, StopOffNoInterlock)
            .PermitIf(PrimePressed, Prime, MayStart, StopOffNoInterlock)
            .PermitReentry(PowerUp);
        Refuses(Rest, StartPressed, OutputTestPressed);
        RefusesIf(Rest, DoseNowPressed, () => !MayStart(), StopOnOrInterlock);
        RefusesIf(Rest, PrimePressed, () => !MayStart(), StopOnOrInterlock);
    }

    private void ConfigureDose()
    {
        LeadsToRestOrFailed(Dose, DoseOver);
        _machine.Configure(Dose)
            .Permit(TimeoutRetriesLeft, RetryPause)
            .Permit(DoseFails, Failed)
            .Permit(Interlock, Failed)
            .Permit(StopOn, Stopped);
        Refuses(Dose, StartPressed, DoseNowPressed, PrimePressed, OutputTestPressed);
        LeadsToRestOrFailed(Dose, PowerUp);
    }

    private void ConfigureRetryPause()
    {
        LeadsToRestOrFailed(RetryPause, DoseOver);
        _machine.Configure(RetryPause)
            .Permit(DoseFails, Failed)
            .Permit(PauseOver, Dose)
            .Permit(Interlock, Failed)
            .Permit(StopOn, Stopped);
        Refuses(RetryPause, StartPressed, DoseNowPressed, PrimePressed, OutputTestPressed);
        LeadsToRestOrFailed(RetryPause, PowerUp);
    }

    private void ConfigurePrime()
    {
        _machine.Configure(Prime)
            .PermitIf(Interlock, Stopped, () => _facts.CameFrom == Stopped, "it came from stopped")
            .PermitIf(Interlock, Failed, () => _facts.CameFrom == Rest, "it came from rest")
            .PermitIf(Interlock, Failed, () => _facts.CameFrom == Failed, "it came from failed")
            .Permit(StopOn, Stopped);
        Refuses(Prime, StartPressed, DoseNowPressed, OutputTestPressed);
        LeadsBack(PrimeOver);
        LeadsBack(PowerUp);
    }

    private void ConfigureStopped()
    {
        _machine.Configure(Stopped)
            .PermitIf(StartPressed, Failed, () => _facts.StopIsOff && _facts.PumpStoppingFailureStands, "stop off, a pump-stopping failure stands")
            .PermitIf(StartPressed, Rest, () => _facts.StopIsOff && !_facts.PumpStoppingFailureStands, "stop off, no pump-stopping failure stands")
            .PermitIf(PrimePressed, Prime, MayStart, StopOffNoInterlock)
            .PermitIf(OutputTestPressed, OutputTest, () => _facts.StopIsOff && !_facts.FailureStands, "stop off, no failure stands")
            .PermitReentry(PowerUp);
        RefusesIf(Stopped, StartPressed, () => !_facts.StopIsOff, "stop on");
        Refuses(Stopped, DoseNowPressed);
        RefusesIf(Stopped, PrimePressed, () => !MayStart(), StopOnOrInterlock);
        RefusesIf(Stopped, OutputTestPressed, () => !_facts.StopIsOff || _facts.FailureStands, "stop on, or a failure stands");
    }

    private void ConfigureFailed()
    {
        _machine.Configure(Failed)
            .PermitIf(DoseDue, Dose, () => _facts.NewTriesAreSet && MayStart(), "new tries are set, stop off, no interlock stands")
            .Permit(StopOn, Stopped)
            .PermitIf(PrimePressed, Prime, MayStart, StopOffNoInterlock)
            .PermitIf(Reset, Rest, () => !_facts.PumpStoppingFailureStands, NoFailureAnyMore)
            .PermitReentry(PowerUp);
        Refuses(Failed, StartPressed, DoseNowPressed, OutputTestPressed);
        RefusesIf(Failed, PrimePressed, () => !MayStart(), StopOnOrInterlock);
    }

    private void ConfigureOutputTest()
    {
        _machine.Configure(OutputTest)
            .Permit(Interlock, Stopped)
            .Permit(StopOn, Stopped)
            .Permit(OutputTestOver, Stopped)
            .Permit(PowerUp, Stopped);
        Refuses(OutputTest, StartPressed, DoseNowPressed, PrimePressed);
    }

    private void LeadsToRestOrFailed(Phase phase, PhaseEvent happening) => _machine.Configure(phase)
        .PermitIf(happening, Rest, () => !_facts.PumpStoppingFailureStands, NoFailureAnyMore)
        .PermitIf(happening, Failed, () => _facts.PumpStoppingFailureStands, FailureStands);

    /// <summary>Prime leads back to the phase in which it was pressed; a reset meanwhile may have cleared what held failed.</summary>
    private void LeadsBack(PhaseEvent happening) => _machine.Configure(Prime)
        .PermitIf(happening, Rest, () => _facts.CameFrom == Rest, "it came from rest")
        .PermitIf(happening, Stopped, () => _facts.CameFrom == Stopped, "it came from stopped")
        .PermitIf(happening, Failed, () => _facts.CameFrom == Failed && _facts.PumpStoppingFailureStands, "it came from failed, a pump-stopping failure stands")
        .PermitIf(happening, Rest, () => _facts.CameFrom == Failed && !_facts.PumpStoppingFailureStands, "it came from failed, no pump-stopping failure stands any more");

    private void Refuses(Phase phase, params ReadOnlySpan<PhaseEvent> presses)
    {
        foreach (PhaseEvent press in presses)
            _machine.Configure(phase).InternalTransition(press, () => _refuse(press));
    }

    private void RefusesIf(Phase phase, PhaseEvent press, Func<bool> guard, string words) =>
        _machine.Configure(phase).InternalTransitionIf(press, _ => guard(), () => _refuse(press), words);

    private bool MayStart() => _facts.StopIsOff && !_facts.InterlockStands;
}
