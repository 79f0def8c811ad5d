using LubeController.Files.Quantities;
using LubeController.Files.Reading;
using LubeController.Plant.Sensors;

namespace LubeController.Files.PlantFiles;

/// <summary>Reads what a plant file says of pressure switch, transmitter and gauge.</summary>
internal sealed class PressureReader(MapReader file)
{
    private static readonly string[] Places = ["pump", "end"];

    /// <summary>The pressure switch, or null where none is written.</summary>
    public PressureSwitchDescription? Switch() => file.Group("pressure-switch", PlantKeys.PressureSwitch) is { } group
        ? new PressureSwitchDescription
        {
            TripPa = group.Need("trip", PlantRanges.Trip),
            ResetPa = group.Need("reset", PlantRanges.Trip),
            Place = Place(group),
            Contact = PlantReader.Contact(group, "contact"),
        }
        : null;

    /// <summary>
    /// A transmitter or gauge, or null where none is fitted: <c>yes</c> is one as the description has it by default,
    /// a group says more of it.
    /// </summary>
    public PressureTransmitterDescription? Reading(string key, KeySet keys)
    {
        var plain = new PressureTransmitterDescription();
        if (file.Map[key] is not MapNode)
            return file.Either(key, "yes", "no") ?? false ? plain : null;
        MapReader group = file.Group(key, keys)!;
        return new PressureTransmitterDescription
        {
            RangePa = group.Quantity("range", PlantRanges.ReadingRange)?.Si ?? plain.RangePa,
            LagS = group.Quantity("lag", PlantRanges.ReadingLag)?.Si ?? plain.LagS,
            Place = Place(group),
            Loop = keys == PlantKeys.Transmitter ? Loop(group) : plain.Loop,
        };
    }

    private static TransmitterLoopDescription Loop(MapReader group)
    {
        var plain = new TransmitterLoopDescription();
        return new TransmitterLoopDescription
        {
            SupplyV = group.Quantity("supply", PlantRanges.Voltage)?.Si ?? plain.SupplyV,
            LeastVoltageV = group.Quantity("least-voltage", PlantRanges.Voltage)?.Si ?? plain.LeastVoltageV,
            LoopOhms = group.Quantity("loop-resistance", PlantRanges.LoopResistance)?.Si ?? plain.LoopOhms,
        };
    }

    private static LinePlace Place(MapReader group) => (LinePlace)(group.Choice("place", Places) ?? (int)LinePlace.Pump);
}
