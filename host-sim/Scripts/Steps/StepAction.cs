using System.Globalization;
using LubeController.Core;
using LubeController.Scripts.Expectations;

namespace LubeController.Scripts.Steps;

/// <summary>Something a step does to the plant or to the controller's inputs. Immutable.</summary>
public abstract record StepAction
{
    /// <summary>What it does, in words.</summary>
    public abstract string Text { get; }
}

/// <summary>Sets a fault.</summary>
/// <param name="Kind">The fault.</param>
/// <param name="Part">The part that has it; empty where it needs none.</param>
/// <param name="MagnitudeSi">Its magnitude in SI units; null where it has none.</param>
public sealed record SetFault(BenchFault Kind, string Part, double? MagnitudeSi) : StepAction
{
    /// <inheritdoc/>
    public override string Text => $"fault {Kind.Name}{(Part.Length > 0 ? " of " + Part : "")}"
        + (MagnitudeSi is { } si && Kind.Magnitude is { } range
            ? $", {range.Family.FromSi(si, range.Unit).ToString("G6", CultureInfo.InvariantCulture)} {range.Unit}" : "");
}

/// <summary>Takes a fault away.</summary>
/// <param name="Kind">The fault.</param>
/// <param name="Part">The part that has it; empty where it needs none.</param>
public sealed record HealFault(BenchFault Kind, string Part) : StepAction
{
    /// <inheritdoc/>
    public override string Text => $"heal {Kind.Name}{(Part.Length > 0 ? " of " + Part : "")}";
}

/// <summary>Presses a button and lets it go.</summary>
/// <param name="Button">The button.</param>
/// <param name="ForUs">How long it is pressed, microseconds.</param>
public sealed record PressButton(Button Button, long ForUs) : StepAction
{
    /// <inheritdoc/>
    public override string Text => $"press {BenchWords.Of(Button)} for {TimeText.Of(ForUs)}";
}

/// <summary>Moves a button: a bench sees presses only as these.</summary>
/// <param name="Button">The button.</param>
/// <param name="Down">Whether it goes down.</param>
public sealed record MoveButton(Button Button, bool Down) : StepAction
{
    /// <inheritdoc/>
    public override string Text => $"{(Down ? "hold" : "release")} {BenchWords.Of(Button)}";
}

/// <summary>Sets a maintained input of the controller.</summary>
/// <param name="Input">The input.</param>
/// <param name="On">Whether it goes on.</param>
public sealed record SetInput(BenchInput Input, bool On) : StepAction
{
    /// <inheritdoc/>
    public override string Text => $"set {BenchWords.Of(Input)} {(On ? "on" : "off")}";
}

/// <summary>Changes the speed of the machine's shaft.</summary>
/// <param name="PerSecond">Speed to be reached, revolutions per second.</param>
/// <param name="RampUs">Time in which it is reached in a straight line, microseconds; 0 at once.</param>
public sealed record SetShaftSpeed(double PerSecond, long RampUs) : StepAction
{
    /// <inheritdoc/>
    public override string Text => $"shaft to {(PerSecond * 60.0).ToString("G6", CultureInfo.InvariantCulture)} rpm"
        + (RampUs > 0 ? $" within {TimeText.Of(RampUs)}" : "");
}

/// <summary>Changes the lubricant's temperature.</summary>
/// <param name="Kelvin">Absolute temperature.</param>
public sealed record SetTemperature(double Kelvin) : StepAction
{
    /// <inheritdoc/>
    public override string Text => $"temperature to {(Kelvin - 273.15).ToString("G6", CultureInfo.InvariantCulture)} degC";
}

/// <summary>Fills the reservoir.</summary>
/// <param name="ContentM3">Content to be reached, m3; less than it holds changes nothing.</param>
public sealed record RefillReservoir(double ContentM3) : StepAction
{
    /// <inheritdoc/>
    public override string Text => $"refill to {(ContentM3 * 1e3).ToString("G6", CultureInfo.InvariantCulture)} l";
}

/// <summary>Switches the controller's power.</summary>
/// <param name="On">Whether it goes on.</param>
public sealed record SetPower(bool On) : StepAction
{
    /// <inheritdoc/>
    public override string Text => $"power {(On ? "on" : "off")}";
}

/// <summary>Does nothing: marks an instant that windows and other steps refer to.</summary>
/// <param name="Remark">What its writer says.</param>
public sealed record MarkTime(string Remark) : StepAction
{
    /// <inheritdoc/>
    public override string Text => Remark;
}
