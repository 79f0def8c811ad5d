namespace LubeController.Analysis.Specification;

/// <summary>What a transition does beside changing the phase.</summary>
internal sealed class PhaseEffects(SpecState state, Dosing dose, PressureDose byPressure)
{
    /// <summary>Follows a transition.</summary>
    /// <param name="source">The phase that was left.</param>
    /// <param name="happening">What happened.</param>
    internal void Follow(Phase source, PhaseEvent happening)
    {
        Phase cameFrom = state.CameFrom;
        Leave(source);
        switch (happening)
        {
            case PhaseEvent.DoseDue or PhaseEvent.DoseNowPressed:
                dose.Begin(isTry: source == Phase.Failed);
                break;
            case PhaseEvent.DoseOver:
                dose.Complete();
                break;
            case PhaseEvent.TimeoutRetriesLeft:
                byPressure.Interrupt();
                break;
            case PhaseEvent.PauseOver:
                byPressure.GoOn();
                break;
            case PhaseEvent.DoseFails or PhaseEvent.Interlock or PhaseEvent.StopOn or PhaseEvent.PowerUp:
                Interrupt(source, happening);
                break;
            case PhaseEvent.Reset:
                state.Rest.AfterFailure = true;
                break;
            case PhaseEvent.PrimeOver:
                state.Rest.AfterFailure |= cameFrom == Phase.Failed && state.Phase == Phase.Rest;
                break;
            case PhaseEvent.PrimePressed:
                state.CameFrom = source;
                dose.ForgetPosition();
                break;
            default:
                break;
        }
    }

    private void Leave(Phase source)
    {
        if (state.Phase != source)
        {
            state.Rest.AfterFailure &= source == Phase.Prime || state.Phase == Phase.Prime;
            state.PhaseMs = 0;
        }

        if (source == Phase.Prime)
            state.CameFrom = Phase.Rest;
    }

    private void Interrupt(Phase source, PhaseEvent happening)
    {
        if (source is Phase.Dose or Phase.RetryPause)
            dose.Interrupt();
        if (happening == PhaseEvent.StopOn)
            dose.ForgetPosition();
    }
}
