using System.Collections.Generic;
using LubeController.Emulator;
using LubeController.Files.Quantities;

namespace LubeController.Scripts.Signals;

/// <summary>What can be known of a recorded signal before any run.</summary>
/// <param name="Name">Dotted name, for instance <c>alarm.divider-stalled</c>.</param>
/// <param name="Kind">Behaviour between recorded points.</param>
/// <param name="SiUnit">Unit of its values, <c>1</c> for counts, codes and on/off.</param>
/// <param name="Labels">Texts of its codes, or null.</param>
public sealed record SignalInfo(string Name, SignalKind Kind, string SiUnit, IReadOnlyList<string>? Labels)
{
    /// <summary>Whether it is on or off, or one of some words: then its margins are times.</summary>
    public bool IsWord => Kind == SignalKind.OnOff || Labels != null;

    /// <summary>Whether it keeps its value between points, so that a step may wait for it.</summary>
    public bool IsDiscrete => Kind != SignalKind.Linear;

    /// <summary>The name as sentences say it, for instance <c>alarm divider-stalled</c>.</summary>
    public string Spoken => Name.Replace('.', ' ');

    /// <summary>What it is a quantity of.</summary>
    public UnitFamily Family => UnitFamily.OfSi(SiUnit);

    /// <summary>Words a predicate may compare it with; empty for numbers.</summary>
    public IReadOnlyList<string> Words => Kind == SignalKind.OnOff ? ["off", "on"] : Labels ?? [];
}
