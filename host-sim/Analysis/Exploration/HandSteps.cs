using System;
using System.Collections.Generic;
using System.Globalization;
using LubeController.Core;
using LubeController.Emulator;
using LubeController.Scripts.Steps;

namespace LubeController.Analysis.Exploration;

/// <summary>Script steps that hold a core's inputs by hand: only what changes is written.</summary>
internal sealed class HandSteps
{
    private readonly List<string> _lines = [];
    private readonly Inputs _shown = new();
    private Button? _held;

    /// <summary>The steps, each as the inside of a YAML group.</summary>
    public IReadOnlyList<string> Lines => _lines;

    /// <summary>Adds a step.</summary>
    public void Add(long at, string what) => _lines.Add(string.Create(CultureInfo.InvariantCulture, $"{{ at: {at} ms, {what} }}"));

    /// <summary>Holds everything that the core looks at, from the first moment on.</summary>
    public void HoldEverything(CoreSetup setup, Inputs first)
    {
        ArgumentNullException.ThrowIfNull(setup);
        foreach (ControllerInput input in ControllerInputs.Settable)
        {
            bool holds = input.IsOperated ? input.Get(first) != input.AtRest : input.IsHeeded?.Invoke(setup.Settings) ?? setup.Alphabet.Has(input);
            if (holds)
                Set(0, input, input.Kind == InputKind.Count ? 0 : input.Get(first));
        }

        _shown.CopyFrom(first);
    }

    /// <summary>Shows the inputs of a letter.</summary>
    public void Show(long at, Inputs now)
    {
        foreach (ControllerInput input in ControllerInputs.Settable)
        {
            int value = input.Get(now);
            if (input.Kind == InputKind.Count ? value > 0 : value != input.Get(_shown))
                Set(at, input, value);
        }

        _shown.CopyFrom(now);
    }

    /// <summary>Holds a button, or none.</summary>
    public void Hold(long at, Button? button)
    {
        if (button == _held)
            return;
        if (_held is { } before)
            Add(at, $"release: {BenchWords.Of(before)}");
        if (button is { } now)
            Add(at, $"hold: {BenchWords.Of(now)}");
        _held = button;
    }

    /// <summary>A level's word.</summary>
    public static string OnOff(bool on) => on ? "on" : "off";

    private void Set(long at, ControllerInput input, int value) => Add(at, $"set: {input.Name}, to: {input.Written(value)}");
}
