using System.Collections.Generic;
using System.Linq;
using LubeController.Files.LubricantFiles;
using LubeController.Files.Quantities;
using LubeController.Files.Reading;
using LubeController.Files.Sorts;
using LubeController.Files.WiringFiles;
using LubeController.Plant.Checking;
using LubeController.Plant.Contacts;
using LubeController.Plant.Description;
using LubeController.Plant.Divider;
using LubeController.Plant.Injectors;
using LubeController.Plant.Line;
using LubeController.Plant.Lubricant;
using LubeController.Plant.Outlets;
using LubeController.Plant.Pistons;
using LubeController.Plant.Pump;
using LubeController.Plant.Reservoir;
using LubeController.Plant.Sensors;
using LubeController.Plant.Supplies;
using LubeController.Plant.Wiring;

namespace LubeController.Files.PlantFiles;

/// <summary>Reads a plant file: one lubrication system with units, then judged as a whole by the plant's own check.</summary>
public sealed class PlantReader
{
    private static readonly string[] Contacts = ["normally-open", "normally-closed"];

    private readonly MapReader _file;
    private readonly ProblemList _problems;

    private readonly int _before;

    private PlantReader(MapNode top, ProblemList problems)
    {
        _before = problems.Count;
        _file = new MapReader(top, FileKeys.Plant, problems);
        _problems = problems;
    }

    /// <summary>Reads a plant file, or returns null where a problem was added.</summary>
    /// <param name="path">Path as the program may open it.</param>
    /// <param name="problems">Takes what is wrong.</param>
    public static LoadedPlant? Read(string path, ProblemList problems)
    {
        MapNode? top = Inheritance.Read(path, problems);
        return top == null || FileSort.IsOther(top, FileKeys.Plant, problems) ? null : new PlantReader(top, problems).Plant();
    }

    private LoadedPlant? Plant()
    {
        string name = Need(_file, "plant", "write what it lubricates, for instance 'salt works, brine pump'");
        LubricantDescription? lubricant = Lubricant();
        ReservoirDescription? reservoir = Reservoir();
        PumpDescription? pump = new PumpReader(_file, _problems).Read();
        var lineReader = new LineReader(_file);
        LineDescription? line = lineReader.Line();
        ReliefDescription? relief = lineReader.Relief();
        VentValveDescription? vent = lineReader.VentValve();
        var dividerReader = new DividerReader(_file, _problems);
        DividerDescription? divider = dividerReader.Read();
        IReadOnlyList<SecondaryDividerDescription> secondaries = dividerReader.Secondaries();
        IReadOnlyList<InjectorDescription> injectors = new InjectorReader(_file).Read();
        IReadOnlyList<OutletDescription> outlets = divider == null ? [] : new OutletReader(_file, _problems).Read(divider, secondaries);
        var switches = CycleSwitches().ToList();
        var pressureReader = new PressureReader(_file);
        PressureSwitchDescription? pressure = pressureReader.Switch();
        PressureTransmitterDescription? transmitter = pressureReader.Reading("pressure-transmitter", PlantKeys.Transmitter);
        PressureTransmitterDescription? gauge = pressureReader.Reading("pressure-gauge", PlantKeys.Gauge);
        ShaftDescription? shaft = Shaft();
        SupplyDescription supply = ControlSupply();
        SupervisoryWiringDescription? wiring = WiringReader.ReadInPlant(_file, _problems);
        double temperature = _file.Quantity("temperature", PlantRanges.Temperature)?.Si ?? 293.15;
        if (_problems.Count > _before || lubricant == null || divider == null)
            return null;
        return Judged(new PlantDescription
        {
            Name = name,
            Lubricant = lubricant,
            Reservoir = reservoir!,
            Pump = pump!,
            Line = line!,
            Relief = relief!,
            VentValve = vent,
            Divider = divider,
            Secondaries = secondaries,
            Injectors = injectors,
            Outlets = outlets,
            CycleSwitches = switches,
            PressureSwitch = pressure,
            HasPressureTransmitter = transmitter != null,
            Transmitter = transmitter ?? new PressureTransmitterDescription(),
            Gauge = gauge,
            Shaft = shaft,
            ControlSupply = supply,
            Wiring = wiring,
            TemperatureK = temperature,
        });
    }

    private LoadedPlant? Judged(PlantDescription plant)
    {
        IReadOnlyList<PlantFinding> findings = PlantCheck.Of(plant);
        foreach (PlantFinding refusal in findings.Where(finding => finding.IsRefusal))
            _problems.Add(PlantFindings.Tell(_file.Map, refusal));
        return findings.Any(finding => finding.IsRefusal) ? null
            : new LoadedPlant(plant, findings.Select(finding => PlantFindings.Tell(_file.Map, finding)).ToArray());
    }

    private LubricantDescription? Lubricant() =>
        NeedGroup(_file, "lubricant", LubricantKeys.InPlant) is { } group ? LubricantReader.ReadInPlant(group, _problems) : null;

    private SupplyDescription ControlSupply()
    {
        var plain = new SupplyDescription();
        if (_file.Group("control-supply", PlantKeys.ControlSupply) is not { } group)
            return plain;
        double nominal = group.Quantity("voltage", PlantRanges.Voltage)?.Si ?? plain.NominalV;
        return new SupplyDescription
        {
            NominalV = nominal,
            // Where only the voltage is written the limits keep their proportion to it.
            LogicOnV = group.Quantity("starts-at", PlantRanges.Voltage)?.Si ?? plain.LogicOnV / plain.NominalV * nominal,
            LogicOffV = group.Quantity("stops-below", PlantRanges.Voltage)?.Si ?? plain.LogicOffV / plain.NominalV * nominal,
            HoldUpUs = group.Quantity("hold-up", PlantRanges.HoldUp) is { } holdUp ? Microseconds.Of(holdUp) : plain.HoldUpUs,
        };
    }

    private ReservoirDescription? Reservoir()
    {
        if (NeedGroup(_file, "reservoir", PlantKeys.Reservoir) is not { } group)
            return null;
        return new ReservoirDescription
        {
            CapacityM3 = group.Need("capacity", PlantRanges.Capacity),
            ContentM3 = group.Need("content", PlantRanges.Reservoir),
            LowLevelM3 = group.Need("low-level", PlantRanges.Reservoir),
            EmptyLevelM3 = group.Need("empty-level", PlantRanges.Reservoir),
            LevelHysteresisM3 = group.Quantity("level-hysteresis", PlantRanges.Reservoir)?.Si ?? 0.0,
            AeratesBelowM3 = group.Quantity("aerates-below", PlantRanges.Reservoir)?.Si ?? 0.0,
            EntrainedAir = group.Quantity("entrained-air", PlantRanges.EntrainedAir)?.Si ?? 0.0,
            LowContact = Contact(group, "low-contact"),
            EmptyContact = Contact(group, "empty-contact"),
        };
    }

    private IEnumerable<CycleSwitchDescription> CycleSwitches()
    {
        foreach (MapReader group in _file.Groups("cycle-switches", PlantKeys.CycleSwitch, most: 64))
        {
            var plain = new CycleSwitchDescription { Name = "", Section = "" };
            yield return plain with
            {
                Name = PlantNames.Need(group, "name", "piston-4"),
                Section = PlantNames.Need(group, "section", "4"),
                End = (Side)(group.Choice("end", DividerReader.Sides) ?? (int)plain.End),
                TripTravel = group.Quantity("trip-travel", PlantRanges.Part)?.Si ?? plain.TripTravel,
                Hysteresis = group.Quantity("hysteresis", PlantRanges.Part)?.Si ?? plain.Hysteresis,
                Contact = Contact(group, "contact"),
                Sensor = SensorReader.ReadIn(group),
            };
        }
    }

    private ShaftDescription? Shaft()
    {
        if (_file.Group("shaft", PlantKeys.Shaft) is not { } group)
            return null;
        var plain = new ShaftDescription();
        return new ShaftDescription
        {
            PulsesPerRevolution = (int)(group.Whole("pulses-per-revolution", 1, 10_000) ?? plain.PulsesPerRevolution),
            InitialSpeedRevPerS = group.Quantity("speed", PlantRanges.ShaftSpeed)?.Si ?? plain.InitialSpeedRevPerS,
            MinimumPulseWidthUs = group.Quantity("shortest-pulse", PlantRanges.ShortestPulse) is { } pulse ? Microseconds.Of(pulse) : plain.MinimumPulseWidthUs,
            Duty = group.Quantity("duty", PlantRanges.Part)?.Si ?? plain.Duty,
        };
    }

    internal static MapReader? NeedGroup(MapReader file, string key, KeySet keys)
    {
        if (!file.Has(key))
            file.Missing(key, $"write it with {NearestName.Some(keys.Keys)}");
        return file.Group(key, keys);
    }

    internal static SwitchContact Contact(MapReader group, string key) => (SwitchContact)(group.Choice(key, Contacts) ?? 0);

    private static string Need(MapReader group, string key, string remedy)
    {
        if (!group.Has(key))
            group.Missing(key, remedy);
        return group.Text(key) ?? "";
    }
}
