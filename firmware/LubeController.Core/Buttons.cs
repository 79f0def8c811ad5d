namespace LubeController.Core;

/// <summary>
/// All buttons, index and bit by <see cref="Button"/>. A button acts on a fresh press: one already on at power-up, or stuck, does
/// nothing until released.
/// </summary>
internal sealed class Buttons
{
    private readonly DebouncedInput[] _inputs = new DebouncedInput[(int)Button.OutputTest + 1];
    private readonly Settings _settings;
    private int _armed;
    private int _held;
    private int _pressed;

    public Buttons(Settings settings)
    {
        _settings = settings;
        for (int index = 0; index < _inputs.Length; index++)
            _inputs[index] = new DebouncedInput();
    }

    private int DebounceMs => _settings[SettingField.ButtonDebounceMs];

    /// <summary>Whether a button was pressed in this scan.</summary>
    public bool WasPressed(Button button) => (_pressed & (1 << (int)button)) != 0;

    /// <summary>Whether a button is held down by a press that was fresh.</summary>
    public bool IsHeld(Button button) => (_held & (1 << (int)button)) != 0;

    public void Forget()
    {
        for (int index = 0; index < _inputs.Length; index++)
            _inputs[index].Forget();
        _armed = 0;
        _held = 0;
    }

    public void Advance(int elapsedMs)
    {
        for (int index = 0; index < _inputs.Length; index++)
            _inputs[index].Advance(elapsedMs);
    }

    public void Sample(Inputs inputs)
    {
        int debounceMs = DebounceMs;
        _pressed = 0;
        for (int index = 0; index < _inputs.Length; index++)
        {
            DebouncedInput input = _inputs[index];
            if (input.Sample(inputs.IsDown((Button)index), debounceMs, true))
                Move(1 << index, input.Level);
        }
    }

    public int DeadlineMs()
    {
        int debounceMs = DebounceMs;
        int deadline = Saturating.Never;
        for (int index = 0; index < _inputs.Length; index++)
            deadline = Saturating.Min(deadline, _inputs[index].DeadlineMs(debounceMs));
        return deadline;
    }

    public void Transfer(StateStream stream)
    {
        int debounceMs = DebounceMs;
        for (int index = 0; index < _inputs.Length; index++)
        {
            _inputs[index].Transfer(stream, debounceMs);
            _armed = stream.FlagIn(_armed, 1 << index);
            _held = stream.FlagIn(_held, 1 << index);
        }
    }

    /// <summary>A button was released, which arms it, or went down, which is a press if it was armed.</summary>
    private void Move(int bit, bool down)
    {
        if (!down)
        {
            _armed |= bit;
            _held &= ~bit;
            return;
        }

        _pressed |= _armed & bit;
        _held = (_held & ~bit) | (_armed & bit);
        _armed &= ~bit;
    }
}
