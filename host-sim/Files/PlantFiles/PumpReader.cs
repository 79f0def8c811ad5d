using System.Linq;
using LubeController.Files.Quantities;
using LubeController.Files.Reading;
using LubeController.Plant.Pump;

namespace LubeController.Files.PlantFiles;

/// <summary>Reads the pump of a plant file.</summary>
internal sealed class PumpReader(MapReader file, ProblemList problems)
{
    private static readonly string[] Kinds = ["cam", "constant-flow"];

    /// <summary>The pump, or null where a problem was added.</summary>
    public PumpDescription? Read()
    {
        if (!file.Has("pump"))
            file.Missing("pump", "write it with kind and, for a constant-flow pump, flow");
        if (file.Group("pump", PlantKeys.Pump) is not { } group)
            return null;
        if (!group.Has("kind"))
            group.Missing("kind", $"write one of: {string.Join(", ", Kinds)}");
        PumpDescription? pump = group.Choice("kind", Kinds) switch
        {
            0 => Cam(group),
            1 => ConstantFlow(group),
            _ => null,
        };
        return pump is null ? null : pump with
        {
            StallPressurePa = group.Quantity("stall-pressure", PlantRanges.StallPressure)?.Si,
            OverloadTripS = group.Quantity("overload-trip-time", PlantRanges.OverloadTrip)?.Si,
            OverloadCoolS = group.Quantity("overload-cool-time", PlantRanges.OverloadCool)?.Si ?? pump.OverloadCoolS,
        };
    }

    private CamPumpDescription Cam(MapReader group)
    {
        RefuseForeign(group, PlantKeys.CamPump);
        double bore = group.Need("bore", PlantRanges.Bore);
        double stroke = group.Need("stroke", PlantRanges.Stroke);
        double speed = group.Need("speed", PlantRanges.CamSpeed);
        var plain = new CamPumpDescription { PistonBoreM = bore, StrokeM = stroke, SpeedRevPerS = speed };
        return plain with
        {
            VolumetricEfficiency = group.Quantity("volumetric-efficiency", PlantRanges.Efficiency)?.Si ?? plain.VolumetricEfficiency,
            SlipM3PerSPa = group.Quantity("slip", PlantRanges.Leakage)?.Si ?? plain.SlipM3PerSPa,
            FillingLoss = group.Quantity("filling-loss", PlantRanges.FillingLoss)?.Si ?? plain.FillingLoss,
            SpeedSagPerPa = group.Quantity("speed-sag", PlantRanges.SpeedSag)?.Si ?? plain.SpeedSagPerPa,
            DeadVolume = group.Quantity("dead-volume", PlantRanges.Part)?.Si ?? plain.DeadVolume,
            DeliverySegments = (int)(group.Whole("delivery-segments", 1, 64) ?? plain.DeliverySegments),
            InitialAngle = group.Quantity("initial-angle", PlantRanges.Part)?.Si ?? plain.InitialAngle,
        };
    }

    private ConstantFlowPumpDescription ConstantFlow(MapReader group)
    {
        RefuseForeign(group, PlantKeys.ConstantFlowPump);
        return new ConstantFlowPumpDescription
        {
            FlowM3PerS = group.Need("flow", PlantRanges.Flow),
        };
    }

    private void RefuseForeign(MapReader group, KeySet own)
    {
        foreach (MapEntry entry in group.Map.Entries.Where(entry => PlantKeys.Pump.Has(entry.Key) && !own.Has(entry.Key)))
            problems.Add(new Problem(entry.KeyPlace, group.Field(entry.Key), entry.Value.Shown, $"{own.Name} has no '{entry.Key}'", $"its fields are {NearestName.Some(own.Keys)}"));
    }
}
