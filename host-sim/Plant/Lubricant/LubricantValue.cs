namespace LubeController.Plant.Lubricant;

/// <summary>One value of a lubricant as a report lists it.</summary>
/// <param name="Name">What it is, in words, for instance <c>yield stress at 25 degC</c>.</param>
/// <param name="Unit">SI unit, for instance <c>Pa</c>; empty for a plain number.</param>
/// <param name="Value">The value and where it comes from.</param>
public sealed record LubricantValue(string Name, string Unit, SourcedValue Value);
