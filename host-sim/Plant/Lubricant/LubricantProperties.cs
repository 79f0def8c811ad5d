using System;
using System.Collections.Generic;
using LubeController.Plant.Checking;
using LubeController.Plant.Numbers;

namespace LubeController.Plant.Lubricant;

/// <summary>
/// A lubricant at its present temperature, as the hydraulics ask for it: how much flows through a tube, how thick, how
/// dense. All powers and exponentials are in tables made at load; afterwards nothing is allocated and nothing transcendental
/// computed. Not for several threads at once.
/// </summary>
/// <remarks>
/// A Herschel-Bulkley flow is a power of the stress beyond the yield stress times a rational function, so one table of
/// s^(1/n) serves every temperature and yield stress: X = tau_y/tau_w,
/// Q = pi·R³·n·((tau_w - tau_y)/K)^(1/n)·(1-X)·[(1-X)²/(3n+1) + 2X(1-X)/(2n+1) + X²/(n+1)], which is the closed form of
/// the checks (tests/Support/Fluids/PipeFlow.cs) with the powers gathered in one.
/// Relative error of a flow against the closed form with the same yield stress and consistency: at most 1e-9. Of yield
/// stress, consistency and viscosity against the laws over temperature: at most 1e-7 above 233 K and 1e-6 down to 200 K, for
/// lines no steeper than those of the grades of ISO 3448.
/// </remarks>
public sealed class LubricantProperties
{
    /// <summary>Reference temperature of oils, K: 40 degC, as ISO 3448 has it.</summary>
    public const double OilReferenceK = 313.15;

    /// <summary>Reference temperature of greases, K: 25 degC, as ASTM D217 has it.</summary>
    public const double GreaseReferenceK = 298.15;

    /// <summary>Shear rate for which a grease's apparent viscosity is given, 1/s: about that of 10 cm3/min in a bore of 6 mm.</summary>
    public const double ReferenceShearRatePerS = 10;

    private const double DensityReferenceK = 288.15;

    private readonly TemperatureTable _consistency;
    private readonly TemperatureTable _yieldStress;
    private readonly PowerTable? _power;
    private readonly double _referenceStrain;
    private readonly double _density;
    private readonly double _expansionPerK;

    /// <summary>Makes the tables of a lubricant.</summary>
    /// <param name="description">The lubricant.</param>
    /// <param name="temperatureK">Temperature at the start, K, 200 to 500.</param>
    /// <exception cref="ArgumentException"><see cref="LubricantCheck"/> refuses the description.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The temperature is outside its range.</exception>
    public LubricantProperties(LubricantDescription description, double temperatureK)
    {
        IReadOnlyList<PlantFinding> findings = LubricantCheck.Of(description);
        if (findings.Count > 0)
            throw new ArgumentException($"{findings[0].Path} is {findings[0].Value}; accepted is {findings[0].Accepted}", nameof(description));
        Description = description;
        _density = description.DensityKgPerM3.Value;
        _expansionPerK = description.ExpansionPerK.Value;
        BulkModulusPa = description.BulkModulusPa.Value;
        if (description is GreaseDescription grease)
        {
            FlowIndex = grease.FlowIndex.Value;
            _yieldStress = TemperatureTable.Exponential(grease.YieldStressPa.Value, grease.YieldCoefficientPerK.Value, GreaseReferenceK);
            _consistency = GreaseConsistency(grease);
            _power = FlowIndex == 1 ? null : new PowerTable(1 / FlowIndex);
            _referenceStrain = RoundedTable.Digits12(Math.Pow(ReferenceShearRatePerS, FlowIndex));
            ReferenceViscosityPaS = Apparent(grease.YieldStressPa.Value, grease.ConsistencyPaSn.Value);
        }
        else
        {
            FlowIndex = 1;
            _yieldStress = TemperatureTable.Constant(0);
            _consistency = OilViscosity((OilDescription)description);
            _referenceStrain = ReferenceShearRatePerS;
            ReferenceViscosityPaS = _consistency.At(OilReferenceK);
        }

        SetTemperature(temperatureK);
    }

    /// <summary>What it was made from.</summary>
    public LubricantDescription Description { get; }

    /// <summary>Temperature now, K.</summary>
    public double TemperatureK { get; private set; }

    /// <summary>Yield stress now, Pa; 0 for an oil.</summary>
    public double YieldStressPa { get; private set; }

    /// <summary>Consistency K now, Pa·s^n; for an oil the dynamic viscosity.</summary>
    public double ConsistencyPaSn { get; private set; }

    /// <summary>Flow index n; 1 for an oil.</summary>
    public double FlowIndex { get; }

    /// <summary>Dynamic viscosity of an oil now, Pa·s; of a grease stress over shear rate at <see cref="ReferenceShearRatePerS"/>.</summary>
    public double ApparentViscosityPaS { get; private set; }

    /// <summary>The same at the reference temperature: 40 degC for an oil, 25 degC for a grease.</summary>
    public double ReferenceViscosityPaS { get; }

    /// <summary>Density now, kg/m3.</summary>
    public double DensityKgPerM3 { get; private set; }

    /// <summary>Bulk modulus of the liquid without gas, Pa; taken as the same at every temperature and pressure.</summary>
    public double BulkModulusPa { get; }

    /// <summary>Sets the temperature, K, 200 to 500.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The temperature is outside its range.</exception>
    public void SetTemperature(double temperatureK)
    {
        if (!(temperatureK >= TemperatureTable.LowestK && temperatureK <= TemperatureTable.HighestK))
            throw new ArgumentOutOfRangeException(nameof(temperatureK), temperatureK, "a lubricant has 200 to 500 K");
        TemperatureK = temperatureK;
        YieldStressPa = _yieldStress.At(temperatureK);
        ConsistencyPaSn = _consistency.At(temperatureK);
        ApparentViscosityPaS = Apparent(YieldStressPa, ConsistencyPaSn);
        DensityKgPerM3 = DensityAt(temperatureK);
    }

    /// <summary>The drop above which the lubricant moves in a tube now, Pa: 4·L·tau_y/D; 0 for an oil.</summary>
    public double StartUpDropPa(double lengthM, double radiusM) => 2 * lengthM * YieldStressPa / radiusM;

    /// <summary>
    /// Steady laminar flow through a round tube now, m3/s: 0 up to the start-up drop, rising beyond it.
    /// </summary>
    /// <param name="dropPa">Pressure drop along the tube, Pa, 0 or more.</param>
    /// <param name="lengthM">Length, m, above 0.</param>
    /// <param name="radiusM">Radius of the bore, m, above 0.</param>
    public double TubeFlowM3PerS(double dropPa, double lengthM, double radiusM) =>
        TubeFlowM3PerS(dropPa, lengthM, radiusM, out _);

    /// <summary>The same with its derivative by the drop, for those who solve for the drop.</summary>
    /// <param name="dropPa">Pressure drop along the tube, Pa, 0 or more.</param>
    /// <param name="lengthM">Length, m, above 0.</param>
    /// <param name="radiusM">Radius of the bore, m, above 0.</param>
    /// <param name="slopeM3PerSPa">
    /// Derivative, m3/(s·Pa): (pi·R³·(shear rate at the wall) - 3Q)/dP; 0 up to the start-up drop of a fluid that has one.
    /// </param>
    public double TubeFlowM3PerS(double dropPa, double lengthM, double radiusM, out double slopeM3PerSPa)
    {
        double wall = dropPa * radiusM / (2 * lengthM);
        double excess = wall - YieldStressPa;
        double cube = Math.PI * radiusM * radiusM * radiusM;
        if (excess <= 0)
        {
            slopeM3PerSPa = YieldStressPa == 0 && _power == null ? cube * radiusM / (8 * lengthM * ConsistencyPaSn) : 0;
            return 0;
        }

        double n = FlowIndex;
        double shear = excess / ConsistencyPaSn;
        double rate = _power == null ? shear : _power.Of(shear);
        double free = excess / wall;
        double x = YieldStressPa / wall;
        double bracket = (free * free / ((3 * n) + 1)) + (2 * x * free / ((2 * n) + 1)) + (x * x / (n + 1));
        double flow = cube * n * rate * free * bracket;
        slopeM3PerSPa = ((cube * rate) - (3 * flow)) / dropPa;
        return flow;
    }

    private static Walther Line(ViscosityDescription viscosity) => viscosity.SecondM2PerS is { } second
        ? Walther.Through(OilReferenceK, viscosity.At40M2PerS.Value, viscosity.SecondTemperatureK, second.Value)
        : Walther.WithSlope(OilReferenceK, viscosity.At40M2PerS.Value, viscosity.Slope!.Value);

    private static TemperatureTable GreaseConsistency(GreaseDescription grease)
    {
        double value = grease.ConsistencyPaSn.Value;
        if (grease.BaseOil == null)
            return TemperatureTable.Exponential(value, grease.ConsistencyCoefficientPerK!.Value, GreaseReferenceK);
        Walther line = Line(grease.BaseOil);
        if (line.B == 0)
            return TemperatureTable.Constant(value);
        double n = grease.FlowIndex.Value;
        double reference = line.ViscosityM2PerS(GreaseReferenceK);
        double At(double temperatureK) => value * Math.Pow(line.ViscosityM2PerS(temperatureK) / reference, n);
        return TemperatureTable.Of(At, temperatureK => At(temperatureK) * n * line.SlopeM2PerSK(temperatureK) / line.ViscosityM2PerS(temperatureK));
    }

    private TemperatureTable OilViscosity(OilDescription oil)
    {
        Walther line = Line(oil.Viscosity);
        if (line.B == 0 && _expansionPerK == 0)
            return TemperatureTable.Constant(oil.Viscosity.At40M2PerS.Value * _density);
        return TemperatureTable.Of(
            temperatureK => line.ViscosityM2PerS(temperatureK) * DensityAt(temperatureK),
            temperatureK => (line.SlopeM2PerSK(temperatureK) * DensityAt(temperatureK)) - (line.ViscosityM2PerS(temperatureK) * _density * _expansionPerK));
    }

    private double Apparent(double yieldStressPa, double consistencyPaSn) =>
        (yieldStressPa + (consistencyPaSn * _referenceStrain)) / ReferenceShearRatePerS;

    private double DensityAt(double temperatureK) => _density * (1 - (_expansionPerK * (temperatureK - DensityReferenceK)));
}
