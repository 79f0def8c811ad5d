using LubeController.Plant.Lubricant;

namespace LubeController.Tests.Support.Fluids;

/// <summary>Lubricants that do not change with temperature; real ones are read from files.</summary>
public static class Lubricants
{
    private const string Invented = "invented for a trial";

    /// <summary>A Newtonian oil whose viscosity is the same at every temperature.</summary>
    /// <param name="viscosityPaS">Dynamic viscosity, Pa·s; over the density it must be 1e-6 to 1e-2 m2/s.</param>
    /// <param name="densityKgPerM3">Density, kg/m3.</param>
    /// <param name="bulkModulusPa">Bulk modulus, Pa.</param>
    public static OilDescription NewtonianOil(double viscosityPaS, double densityKgPerM3 = 900, double bulkModulusPa = 1.4e9) => new()
    {
        Name = "invented oil",
        DensityKgPerM3 = Value(densityKgPerM3),
        ExpansionPerK = Value(0),
        BulkModulusPa = Value(bulkModulusPa),
        Viscosity = new ViscosityDescription { At40M2PerS = Value(viscosityPaS / densityKgPerM3), Slope = Value(0) },
    };

    /// <summary>A Herschel-Bulkley grease that is the same at every temperature.</summary>
    /// <param name="yieldStressPa">Yield stress, Pa.</param>
    /// <param name="consistencyPaSn">Consistency, Pa·s^n.</param>
    /// <param name="flowIndex">Flow index.</param>
    /// <param name="densityKgPerM3">Density, kg/m3.</param>
    /// <param name="bulkModulusPa">Bulk modulus, Pa.</param>
    public static GreaseDescription SteadyGrease(
        double yieldStressPa, double consistencyPaSn, double flowIndex, double densityKgPerM3 = 900, double bulkModulusPa = 1.4e9) => new()
        {
            Name = "invented grease",
            DensityKgPerM3 = Value(densityKgPerM3),
            ExpansionPerK = Value(0),
            BulkModulusPa = Value(bulkModulusPa),
            YieldStressPa = Value(yieldStressPa),
            ConsistencyPaSn = Value(consistencyPaSn),
            FlowIndex = Value(flowIndex),
            YieldCoefficientPerK = Value(0),
            ConsistencyCoefficientPerK = Value(0),
        };

    private static SourcedValue Value(double value) => new(value, Invented, Confidence.Assumed);
}
