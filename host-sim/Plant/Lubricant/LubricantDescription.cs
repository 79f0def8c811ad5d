using System.Collections.Generic;
using System.Linq;

namespace LubeController.Plant.Lubricant;

/// <summary>
/// The lubricant: an <see cref="OilDescription"/> or a <see cref="GreaseDescription"/>. Every physical value says where it
/// comes from.
/// </summary>
public abstract record LubricantDescription
{
    /// <summary>Grease or oil.</summary>
    public abstract LubricantKind Kind { get; }

    /// <summary>A name for reports, for instance <c>NLGI 1</c> or <c>ISO VG 220</c>; not empty.</summary>
    public required string Name { get; init; }

    /// <summary>Density at 15 degC, kg/m3, 500 to 2000.</summary>
    public required SourcedValue DensityKgPerM3 { get; init; }

    /// <summary>Thermal expansion, 1/K, 0 to 0.002: density falls by this part of its value at 15 degC for each kelvin.</summary>
    public required SourcedValue ExpansionPerK { get; init; }

    /// <summary>Bulk modulus of the liquid without gas, Pa, 1e8 to 1e10.</summary>
    public required SourcedValue BulkModulusPa { get; init; }

    /// <summary>Every value with its name and unit.</summary>
    public abstract IReadOnlyList<LubricantValue> Values();

    /// <summary>The values that are assumed or only from memory, which every report of a result must show.</summary>
    public IReadOnlyList<LubricantValue> Assumptions() => Values().Where(value => value.Value.IsAssumption).ToArray();

    /// <summary>The values that oils and greases share.</summary>
    protected IReadOnlyList<LubricantValue> CommonValues() =>
    [
        new("density at 15 degC", "kg/m3", DensityKgPerM3),
        new("thermal expansion", "1/K", ExpansionPerK),
        new("bulk modulus", "Pa", BulkModulusPa),
    ];
}
