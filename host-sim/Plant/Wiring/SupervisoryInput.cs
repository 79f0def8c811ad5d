using System.Collections.Generic;
using System.Linq;
using LubeController.Plant.Circuits;
using LubeController.Plant.Inputs;

namespace LubeController.Plant.Wiring;

/// <summary>One input of the supervisory system at work: its part of the circuit, and its state.</summary>
internal sealed class SupervisoryInput
{
    private const string Changing = "changing";

    private static readonly string[] Levels = ["off", "on", Changing];

    private readonly Circuit _circuit;
    private readonly DigitalInput? _digital;
    private readonly LineSupervision? _supervision;
    private readonly int _from;
    private readonly int _to;
    private readonly int _element;
    private readonly int _feed;

    internal SupervisoryInput(Circuit circuit, SupervisoryInputDescription description, int from, int to, ulong seed)
    {
        _circuit = circuit;
        _from = from;
        _to = to;
        _supervision = description.Supervision;
        if (_supervision is null)
        {
            _digital = new DigitalInput(description.Type, description.Undefined, seed);
            _element = circuit.AddCurve(description.Name, from, to, InputCurves.Of(description.Type));
            States = Levels;
            return;
        }

        _feed = _supervision.FeedV > 0 ? circuit.AddVoltageSource(description.Name, from, to, _supervision.FeedV, _supervision.Ohms) : -1;
        _element = _feed >= 0 ? _feed : circuit.AddConductor(description.Name, from, to, _supervision.Ohms);
        States = [.. _supervision.Windows.Select(window => window.State), _supervision.Elsewhere, Changing];
    }

    internal IReadOnlyList<string> States { get; }

    internal int State { get; private set; }

    /// <summary>Whether it stood in its undefined zone in any position that was read.</summary>
    internal bool Undefined { get; private set; }

    internal double VoltageV { get; private set; }

    internal double CurrentA { get; private set; }

    internal void Read()
    {
        Measure();
        State = StateNow();
        Undefined = _digital is { Reading: InputReading.Undefined };
    }

    /// <summary>Reads once more while contacts beat or a relay buzzes: a state that does not stay is changing.</summary>
    internal void ReadAgain()
    {
        Measure();
        if (StateNow() != State)
            State = States.Count - 1;
        Undefined |= _digital is { Reading: InputReading.Undefined };
    }

    private void Measure()
    {
        VoltageV = _circuit.AcrossV(_element);
        CurrentA = _circuit.CurrentA(_element);
    }

    private int StateNow() => _digital is not null ? (_digital.Read(VoltageV, CurrentA) ? 1 : 0) : Window(VoltageV);

    private int Window(double volts)
    {
        IReadOnlyList<VoltageWindow> windows = _supervision!.Windows;
        for (int index = 0; index < windows.Count; index++)
        {
            if (volts >= windows[index].LowV && volts <= windows[index].HighV)
                return index;
        }

        return windows.Count;
    }
}
