using LubeController.Plant.Lubricant;

namespace LubeController.Plant.Tests.Proof;

/// <summary>Lubricants that change with temperature, with figures of the usual size; none of them is sold.</summary>
internal static class ProofLubricants
{
    private const string Invented = "invented, of the usual size";

    /// <summary>An oil of 220 mm2/s at 40 degC and 19 at 100 degC: 852 at 20 degC, 5287 at 0 degC.</summary>
    internal static readonly OilDescription Oil = new()
    {
        Name = "invented oil",
        DensityKgPerM3 = Value(895),
        ExpansionPerK = Value(7e-4),
        BulkModulusPa = Value(1.75e9),
        Viscosity = new ViscosityDescription { At40M2PerS = Value(220e-6), SecondM2PerS = Value(19e-6) },
    };

    /// <summary>A soft grease: 189 Pa to start it at 25 degC, a good third less each 20 K.</summary>
    internal static readonly GreaseDescription Grease = new()
    {
        Name = "invented grease",
        DensityKgPerM3 = Value(900),
        ExpansionPerK = Value(7e-4),
        BulkModulusPa = Value(1.4e9),
        YieldStressPa = Value(189),
        ConsistencyPaSn = Value(4.1),
        FlowIndex = Value(0.797),
        YieldCoefficientPerK = Value(0.02),
        ConsistencyCoefficientPerK = Value(0.04),
    };

    /// <summary>A stiffer grease: 650 Pa to start it at 25 degC.</summary>
    internal static readonly GreaseDescription StiffGrease = Grease with
    {
        Name = "invented stiff grease",
        YieldStressPa = Value(650),
        ConsistencyPaSn = Value(20.6),
        FlowIndex = Value(0.605),
    };

    private static SourcedValue Value(double value) => new(value, Invented, Confidence.Assumed);
}
