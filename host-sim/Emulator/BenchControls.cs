using System;
using System.Linq;
using LubeController.Core;

namespace LubeController.Emulator;

/// <summary>What people and other machines do to the controller: power, operated inputs, and inputs held by hand whatever their sensors show.</summary>
public sealed class BenchControls
{
    private readonly int?[] _held = [.. ControllerInputs.All.Select(input => input.IsOperated ? input.AtRest : (int?)null)];
    private readonly int[] _given = new int[ControllerInputs.All.Count];
    private ControllerInput[] _shown;

    /// <summary>Makes controls that nobody touches, with power on.</summary>
    public BenchControls() => _shown = Shown();

    /// <summary>Whether the board has power.</summary>
    public bool Power { get; set; } = true;

    /// <summary>Sets an input, or gives it back to its sensor.</summary>
    /// <param name="input">The input.</param>
    /// <param name="value">A value as <see cref="ControllerInput"/> has them; null gives it back.</param>
    /// <exception cref="ArgumentException">An operated input, which has no sensor, is given back.</exception>
    public void Set(ControllerInput input, int? value)
    {
        ArgumentNullException.ThrowIfNull(input);
        if (value == null && input.IsOperated)
            throw new ArgumentException($"'{input.Name}' has no sensor to give it back to", nameof(value));
        if (input.Kind == InputKind.Count)
            _given[input.Row] = value ?? 0;
        _held[input.Row] = value;
        _shown = Shown();
    }

    /// <summary>Holds a button down, or lets it go.</summary>
    public void SetButton(Button button, bool down) => Set(ControllerInputs.Of(button), down ? 1 : 0);

    /// <summary>Whether an input is held by hand or operated.</summary>
    internal bool IsHeld(ControllerInput input) => _held[input.Row] != null;

    /// <summary>What an input is held at; null where its sensor shows through.</summary>
    internal int? Held(ControllerInput input) => _held[input.Row];

    /// <summary>Whether pulses or revolutions wait for the next scan.</summary>
    internal bool GivesCounts => _given[ControllerInputs.ShaftPulses.Row] > 0 || _given[ControllerInputs.PumpRevolutions.Row] > 0;

    /// <summary>Hands out the pulses or revolutions given by hand since the last call.</summary>
    internal int TakeCount(ControllerInput input)
    {
        int count = _given[input.Row];
        _given[input.Row] = 0;
        return count;
    }

    /// <summary>Puts what is held or operated in the place of what sensors show. Counts are handed out by <see cref="TakeCount"/>.</summary>
    internal void CopyTo(Inputs inputs)
    {
        foreach (ControllerInput input in _shown)
            input.Set(inputs, _held[input.Row]!.Value);
    }

    private ControllerInput[] Shown() => [.. ControllerInputs.All.Where(input => IsHeld(input) && input.Kind != InputKind.Count)];
}
