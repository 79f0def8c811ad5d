using System.Collections.Generic;
using LubeController.Plant.Fields;

namespace LubeController.Plant.Pump;

/// <summary>The fields of a pump.</summary>
public static class PumpFields
{
    private static readonly NumberField<CamPumpDescription> InitialAngle = new("initial-angle", "Where the cam stands at the start, in parts of a turn.", Measure.Ratio, "%", 0, 1, p => p.InitialAngle, (p, v) => p with { InitialAngle = v });

    /// <summary>All of them, by kind.</summary>
    public static KindSet<PumpDescription> All { get; } = new("a pump", FieldKind<PumpDescription>.Of("cam", Cam()), FieldKind<PumpDescription>.Of("constant-flow", ConstantFlow()));

    /// <summary>The field that the plant's own check names.</summary>
    internal static Field StallPressure { get; } = Motor<PumpDescription>()[0];

    private static FieldSet<CamPumpDescription> Cam() => new(
        "a cam pump",
        new CamPumpDescription { PistonBoreM = double.NaN, StrokeM = double.NaN, SpeedRevPerS = double.NaN },
        [
            new KindField<CamPumpDescription>("cam", "constant-flow") { Required = true },
            new NumberField<CamPumpDescription>("bore", "Bore of the piston.", Measure.Length, "mm", 1e-3, 0.1, p => p.PistonBoreM, (p, v) => p with { PistonBoreM = v }) { Required = true },
            new NumberField<CamPumpDescription>("stroke", "Stroke of the piston.", Measure.Length, "mm", 1e-4, 0.2, p => p.StrokeM, (p, v) => p with { StrokeM = v }) { Required = true },
            new NumberField<CamPumpDescription>("speed", "Speed of the cam while the motor runs.", Measure.Speed, "rpm", 1e-3, 100, p => p.SpeedRevPerS, (p, v) => p with { SpeedRevPerS = v }) { Required = true },
            new NumberField<CamPumpDescription>("volumetric-efficiency", "Delivered volume, part of the stroke volume.", Measure.Ratio, "%", 0.01, 1, p => p.VolumetricEfficiency, (p, v) => p with { VolumetricEfficiency = v }),
            new NumberField<CamPumpDescription>("slip", "What leaks back past the piston while it delivers, at reference viscosity (oil at 40 degC, grease at 25 degC).", Measure.Leakage, "cm3/min/bar", 0, 1e-9, p => p.SlipM3PerSPa, (p, v) => p with { SlipM3PerSPa = v }),
            new NumberField<CamPumpDescription>("filling-loss", "a at reference viscosity and this speed: the element fills to 1/(1 + a m n), m the viscosity and n the speed relative to those.", Measure.Ratio, "1", 0, 10, p => p.FillingLoss, (p, v) => p with { FillingLoss = v }),
            new NumberField<CamPumpDescription>("speed-sag", "Part of its speed that the motor loses with each unit of pressure at the outlet while it delivers.", Measure.PerPressure, "%/bar", 0, 1e-6, p => p.SpeedSagPerPa, (p, v) => p with { SpeedSagPerPa = v }),
            .. Motor<CamPumpDescription>(),
            new NumberField<CamPumpDescription>("dead-volume", "Volume left at the end of the stroke, part of the stroke: air leaves only as far as it is compressed beyond it.", Measure.Ratio, "%", 0, 1, p => p.DeadVolume, (p, v) => p with { DeadVolume = v }),
            new WholeField<CamPumpDescription>("delivery-segments", "Pieces of constant flow that stand for the delivery half of a turn.", 1, 64, p => p.DeliverySegments, (p, v) => p with { DeliverySegments = v }),
            InitialAngle,
        ])
    {
        Rules = [new(InitialAngle, p => p.InitialAngle < 1, p => "0 up to, not including, 1 revolution")],
    };

    private static FieldSet<ConstantFlowPumpDescription> ConstantFlow() => new(
        "a constant-flow pump",
        new ConstantFlowPumpDescription { FlowM3PerS = double.NaN },
        [
            new KindField<ConstantFlowPumpDescription>("cam", "constant-flow") { Required = true },
            new NumberField<ConstantFlowPumpDescription>("flow", "Flow while the motor runs.", Measure.Flow, "cm3/min", 1e-12, 1e-2, p => p.FlowM3PerS, (p, v) => p with { FlowM3PerS = v }) { Required = true },
            .. Motor<ConstantFlowPumpDescription>(),
        ]);

    /// <summary>What pumps of every kind have.</summary>
    private static IReadOnlyList<Field<T>> Motor<T>()
        where T : PumpDescription =>
    [
        new NumberField<T>("stall-pressure", "Pressure at the outlet that stalls the motor at nominal supply, less in proportion at a lower one.", Measure.Pressure, "bar", 1e5, 1e9, p => p.StallPressurePa, (p, v) => (T)((PumpDescription)p with { StallPressurePa = v })) { Absent = "2.5 times the relief valve's opening pressure" },
        new NumberField<T>("overload-trip-time", "How long the motor may stand under power before its overload relay trips, takes it off and closes its signalling contact.", Measure.Time, "s", 0.1, 600, p => p.OverloadTripS, (p, v) => (T)((PumpDescription)p with { OverloadTripS = v })) { Absent = "no relay" },
        new NumberField<T>("overload-cool-time", "After this time the tripped relay is cool and resets by itself.", Measure.Time, "s", 1, 36_000, p => p.OverloadCoolS, (p, v) => (T)((PumpDescription)p with { OverloadCoolS = v })),
    ];
}
