using System.Collections.Generic;

namespace LubeController.Plant.Lubricant;

/// <summary>An oil: Newtonian, with a viscosity over temperature.</summary>
public sealed record OilDescription : LubricantDescription
{
    /// <inheritdoc/>
    public override LubricantKind Kind => LubricantKind.Oil;

    /// <summary>ISO 3448 grade, mm²/s at 40 degC, or null where the oil has none.</summary>
    public double? IsoViscosityGrade { get; init; }

    /// <summary>Viscosity over temperature.</summary>
    public required ViscosityDescription Viscosity { get; init; }

    /// <inheritdoc/>
    public override IReadOnlyList<LubricantValue> Values() => [.. Viscosity.Values(""), .. CommonValues()];
}
