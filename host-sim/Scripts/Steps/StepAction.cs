using System.Globalization;
using LubeController.Core;
using LubeController.Emulator;
using LubeController.Files.Quantities;
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
    /// <summary>Its second number in SI units; null where it has none.</summary>
    public double? SecondSi { get; init; }

    /// <summary>Time in which it grows from its harmless magnitude, microseconds; 0 at once.</summary>
    public long OverUs { get; init; }

    /// <summary>Whether the seed decides the part.</summary>
    public bool AnyPart { get; init; }

    /// <summary>The range from which the seed takes the magnitude; null where it is written.</summary>
    public DrawRange? Draw { get; init; }

    /// <inheritdoc/>
    public override string Text => $"fault {Kind.Name}{(AnyPart ? " of any part" : Part.Length > 0 ? " of " + Part : "")}"
        + (Draw is { } draw ? $", {draw}" : MagnitudeSi is { } si && Kind.Magnitude is { } range ? ", " + Written(si, range) : "")
        + (SecondSi is { } second && Kind.Second is { } number ? $", {number.Name} {Written(second, number.Range)}" : "")
        + (OverUs > 0 ? $", over {TimeText.Of(OverUs)}" : "");

    /// <summary>A number of a fault in its usual unit.</summary>
    internal static string Written(double si, QuantityRange range) =>
        new Quantity(double.Parse(range.Family.FromSi(si, range.Unit).ToString("G6", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture), range.Unit, range.Family).ToString();
}

/// <summary>Gives a fault that grows its next magnitude: a bench sees gradual faults only as these.</summary>
/// <param name="Kind">The fault.</param>
/// <param name="Part">The part that has it; empty where it needs none.</param>
/// <param name="MagnitudeSi">The magnitude in SI units.</param>
public sealed record GrowFault(BenchFault Kind, string Part, double MagnitudeSi) : StepAction
{
    /// <inheritdoc/>
    public override string Text => $"fault {Kind.Name}{(Part.Length > 0 ? " of " + Part : "")} reaches {SetFault.Written(MagnitudeSi, Kind.Magnitude!)}";
}

/// <summary>Takes a fault away.</summary>
/// <param name="Kind">The fault.</param>
/// <param name="Part">The part that has it; empty where it needs none.</param>
public sealed record HealFault(BenchFault Kind, string Part) : StepAction
{
    /// <summary>Whether it is taken from whichever parts have it.</summary>
    public bool AnyPart { get; init; }

    /// <inheritdoc/>
    public override string Text => $"heal {Kind.Name}{(AnyPart ? " of any part" : Part.Length > 0 ? " of " + Part : "")}";
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

/// <summary>Sets an input of the controller, whatever the plant's sensor shows, or gives it back to its sensor.</summary>
/// <param name="Input">The input.</param>
/// <param name="Value">0 off and 1 on for a level, else a number in the unit of the input image; null gives it back.</param>
/// <param name="Written">The value as written.</param>
public sealed record SetInput(ControllerInput Input, int? Value, string Written) : StepAction
{
    /// <inheritdoc/>
    public override string Text => $"set {Input.Name} {Written}";
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

/// <summary>What a person does to what is shown of an alarm.</summary>
/// <param name="Deed">What.</param>
/// <param name="Alarm">The alarm.</param>
/// <param name="ForUs">How long it is shelved, microseconds, whole milliseconds; 0 for the other deeds.</param>
public sealed record HideAlarm(AlarmDeed Deed, AlarmId Alarm, long ForUs) : StepAction
{
    /// <inheritdoc/>
    public override string Text => $"{BenchWords.Of(Deed)} {AlarmTable.Spec(Alarm).Name}{(Deed == AlarmDeed.Shelve ? " for " + TimeText.Of(ForUs) : "")}";
}

/// <summary>Does nothing: marks an instant that windows and other steps refer to.</summary>
/// <param name="Remark">What its writer says.</param>
public sealed record MarkTime(string Remark) : StepAction
{
    /// <inheritdoc/>
    public override string Text => Remark;
}
