namespace LubeController.Core;

/// <summary>A button that acts on a fresh press: one already on at power-up, or stuck, does nothing until released.</summary>
internal sealed class PressButton
{
    private readonly DebouncedInput _input = new DebouncedInput();
    private bool _armed;

    /// <summary>Whether the button is held down by a press that was fresh.</summary>
    public bool Held { get; private set; }

    public void Forget()
    {
        _input.Forget();
        _armed = false;
        Held = false;
    }

    public void Advance(int elapsedMs) => _input.Advance(elapsedMs);

    /// <returns>Whether the button was pressed just now.</returns>
    public bool Sample(bool raw, int debounceMs)
    {
        if (!_input.Sample(raw, debounceMs, true))
            return false;
        bool pressed = _input.Level && _armed;
        _armed = !_input.Level;
        Held = pressed;
        return pressed;
    }

    public int DeadlineMs(int debounceMs) => _input.DeadlineMs(debounceMs);

    public void Transfer(StateStream stream, int debounceMs)
    {
        _input.Transfer(stream, debounceMs);
        _armed = stream.Flag(_armed);
        Held = stream.Flag(Held);
    }
}
