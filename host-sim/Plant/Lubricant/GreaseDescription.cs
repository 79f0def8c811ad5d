using System.Collections.Generic;

namespace LubeController.Plant.Lubricant;

/// <summary>
/// A grease: Herschel-Bulkley, tau = tau_y + K·(shear rate)^n, with yield stress and consistency that fall with temperature.
/// </summary>
public sealed record GreaseDescription : LubricantDescription
{
    /// <summary>
    /// What stands for the temperature coefficient of the yield stress where none is given: exponential as in Cyriac, Lugt
    /// and Bosman, Tribology Transactions 58, 2015; the figure itself is an assumption (halved every 35 K).
    /// </summary>
    public static readonly SourcedValue AssumedYieldCoefficientPerK = new(0.02, "no figure for this grease: halved every 35 K", Confidence.Assumed);

    /// <inheritdoc/>
    public override LubricantKind Kind => LubricantKind.Grease;

    /// <summary>NLGI number, <c>000</c> to <c>6</c>, or null where the grease has none.</summary>
    public string? NlgiGrade { get; init; }

    /// <summary>Yield stress at 25 degC, Pa, 0 to 1e5.</summary>
    public required SourcedValue YieldStressPa { get; init; }

    /// <summary>Consistency K at 25 degC, Pa·s^n, 1e-4 to 1e5.</summary>
    public required SourcedValue ConsistencyPaSn { get; init; }

    /// <summary>Flow index n, 0.2 to 1, the same at every temperature.</summary>
    public required SourcedValue FlowIndex { get; init; }

    /// <summary>Temperature coefficient of the yield stress, 1/K, 0 to 0.1: tau_y = tau_y(25 degC)·exp(-coefficient·(T - 25 degC)).</summary>
    public SourcedValue YieldCoefficientPerK { get; init; } = AssumedYieldCoefficientPerK;

    /// <summary>The like coefficient of the consistency, 1/K, 0 to 0.1, or null where <see cref="BaseOil"/> is given.</summary>
    public SourcedValue? ConsistencyCoefficientPerK { get; init; }

    /// <summary>
    /// The base oil, or null where <see cref="ConsistencyCoefficientPerK"/> is given: consistency follows the oil's
    /// viscosity, K = K(25 degC)·(nu/nu(25 degC))^n, because the oil's viscosity scales the time in the shear rate.
    /// </summary>
    public ViscosityDescription? BaseOil { get; init; }

    /// <inheritdoc/>
    public override IReadOnlyList<LubricantValue> Values()
    {
        var values = new List<LubricantValue>
        {
            new("yield stress at 25 degC", "Pa", YieldStressPa),
            new("consistency at 25 degC", "Pa.s^n", ConsistencyPaSn),
            new("flow index", "", FlowIndex),
            new("temperature coefficient of the yield stress", "1/K", YieldCoefficientPerK),
        };
        if (ConsistencyCoefficientPerK != null)
            values.Add(new("temperature coefficient of the consistency", "1/K", ConsistencyCoefficientPerK));
        if (BaseOil != null)
            values.AddRange(BaseOil.Values("base oil "));
        values.AddRange(CommonValues());
        return values;
    }
}
