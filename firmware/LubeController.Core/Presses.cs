namespace LubeController.Core;

/// <summary>What each button does in each phase. A press that is not obeyed is counted and reported.</summary>
internal sealed class Presses
{
    private readonly Inputs _inputs;
    private readonly ScanEvents _events;
    private readonly AlarmList _alarms;
    private readonly Buttons _buttons;
    private readonly PhaseMachine _phases;
    private readonly DoseControl _doses;
    private readonly DoseProgress _dose;
    private readonly Reset _reset;
    private int _refused;

    public Presses(Inputs inputs, ScanEvents events, AlarmList alarms, Buttons buttons, PhaseMachine phases, DoseControl doses, DoseProgress dose, Reset reset)
    {
        _inputs = inputs;
        _events = events;
        _alarms = alarms;
        _buttons = buttons;
        _phases = phases;
        _doses = doses;
        _dose = dose;
        _reset = reset;
    }

    /// <summary>Presses refused, saturating.</summary>
    public int Refused => _refused;

    /// <summary>Whether neither stop nor an interlock keeps the pump off; true of the scan in which either comes, too, before the phase has followed.</summary>
    public bool PumpMayStart => !_inputs.Stop && !_alarms.InterlockStands;

    private bool MayPrime =>
        PumpMayStart && (_phases.Phase == Phase.Rest || _phases.Phase == Phase.Stopped || _phases.Phase == Phase.Failed);

    private bool MayLeaveStopped => _phases.Phase == Phase.Stopped && !_inputs.Stop;

    /// <summary>Samples the buttons and does what was pressed: reset comes before start and dose-now.</summary>
    public void Answer()
    {
        _buttons.Sample(_inputs);
        if (_buttons.WasPressed(Button.Acknowledge) && IsObeyed(Button.Acknowledge, true))
            _alarms.Acknowledge();
        if (_buttons.WasPressed(Button.Reset) && IsObeyed(Button.Reset, true))
            _reset.Perform();
        if (_buttons.WasPressed(Button.Start) && IsObeyed(Button.Start, MayLeaveStopped))
            _phases.Enter(_alarms.PumpStoppingStands ? Phase.Failed : Phase.Rest);
        if (_buttons.WasPressed(Button.DoseNow) && IsObeyed(Button.DoseNow, _phases.Phase == Phase.Rest && PumpMayStart))
            _doses.Begin(false);
        if (_buttons.WasPressed(Button.Prime) && IsObeyed(Button.Prime, MayPrime))
            Prime();
        if (_buttons.WasPressed(Button.OutputTest) && _phases.Phase != Phase.OutputTest && IsObeyed(Button.OutputTest, MayLeaveStopped && !_alarms.FailureStands))
            _phases.Enter(Phase.OutputTest);
    }

    public void TransferRefused(StateStream stream) => _refused = stream.Counter(_refused);

    private bool IsObeyed(Button button, bool allowed)
    {
        if (!allowed)
            _refused = Saturating.Add(_refused, 1);
        _events.Add(allowed ? ScanEvent.PressObeyed : ScanEvent.PressRefused, (int)button, 0);
        return allowed;
    }

    private void Prime()
    {
        _dose.ForgetPosition();
        _phases.EnterPrime();
    }
}
