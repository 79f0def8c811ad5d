using System.Collections.Generic;
using System.Linq;
using LubeController.Plant;
using LubeController.Plant.Description;

namespace LubeController.Emulator;

/// <summary>Records what the plant does, at each of its events: only what bent or jumped there.</summary>
internal sealed class PlantRecorder : IPlantObserver
{
    // In the order of Ne43Reading.
    private static readonly string[] Meanings = ["failure-low", "under-range", "valid", "over-range", "failure-high"];

    private readonly Signal _pressure;
    private readonly Signal _content;
    private readonly Signal _pumped;
    private readonly Signal _relieved;
    private readonly Signal _leaked;
    private readonly Signal _control;
    private readonly Signal? _endPressure;
    private readonly Signal? _transmitter;
    private readonly Signal? _transmitterMeaning;
    private readonly Signal? _gauge;
    private readonly Signal[] _travel;
    private readonly Signal?[] _indicators;
    private readonly Signal[] _injected;
    private readonly Signal[] _delivered;

    public PlantRecorder(Trace trace, PlantDescription plant)
    {
        _pressure = trace.Define("pressure.line", SignalKind.Linear, "Pa");
        _content = trace.Define("reservoir.content", SignalKind.Linear, "m3");
        _pumped = trace.Define("volume.pumped", SignalKind.Linear, "m3");
        _relieved = trace.Define("volume.relieved", SignalKind.Linear, "m3");
        _leaked = trace.Define("volume.leaked", SignalKind.Linear, "m3");
        _control = trace.Define("supply.control", SignalKind.Linear, "V");
        if (plant.Line.Segments.Count > 0 || plant.Line.StrainerLossPa > 0)
            _endPressure = trace.Define("pressure.end", SignalKind.Linear, "Pa");
        if (plant.Transmitter is not null)
        {
            _transmitter = trace.Define("pressure.transmitter", SignalKind.Linear, "Pa");
            _transmitterMeaning = trace.Define("transmitter", SignalKind.Step, "1", Meanings);
        }

        if (plant.Gauge is not null)
            _gauge = trace.Define("pressure.gauge", SignalKind.Linear, "Pa");
        _travel = Define(trace, "piston.", "1", plant.AllSections.Select(section => section.Name));
        _indicators = DefineIndicators(trace, plant);
        _injected = Define(trace, "injector.", "1", plant.Injectors.Select(injector => injector.Name));
        _delivered = Define(trace, "delivered.", "m3", plant.Outlets.Select(outlet => outlet.Name));
    }

    /// <summary>Records what arrives through the wiring, or null where there is none.</summary>
    public WiringRecorder? Wiring { get; set; }

    public void OnEvent(LubricationSystem system, long timeUs, in PlantChange change)
    {
        PlantQuantities bent = change.Quantities;
        if ((bent & PlantQuantities.LinePressure) != 0)
            _pressure.Record(timeUs, system.LinePressurePa);
        if ((bent & PlantQuantities.EndPressure) != 0)
            _endPressure?.Record(timeUs, system.EndPressurePa);
        _transmitter?.Record(timeUs, system.TransmitterPressurePa);
        _transmitterMeaning?.Record(timeUs, (int)system.TransmitterMeaning);
        _gauge?.Record(timeUs, system.GaugePressurePa);
        if ((bent & PlantQuantities.ControlSupply) != 0)
            _control.Record(timeUs, system.ControlVoltageV);
        if ((bent & PlantQuantities.ReservoirContent) != 0)
            _content.Record(timeUs, system.ReservoirContentM3);
        if ((bent & PlantQuantities.Pumped) != 0)
            _pumped.Record(timeUs, system.PumpedM3);
        if ((bent & PlantQuantities.Relieved) != 0)
            _relieved.Record(timeUs, system.RelievedM3);
        if ((bent & PlantQuantities.Leaked) != 0)
            _leaked.Record(timeUs, system.LeakedM3);
        if ((bent & PlantQuantities.Wiring) != 0)
            Wiring?.Record(timeUs);
        ulong pistons = change.Pistons;
        for (int index = 0; pistons != 0; index++, pistons >>= 1)
        {
            if ((pistons & 1) == 0)
                continue;
            if (index < _travel.Length)
                RecordPiston(timeUs, index, system.PistonTravel(index));
            else
                _injected[index - _travel.Length].Record(timeUs, system.InjectorDischarged(index - _travel.Length));
        }

        System.UInt128 outlets = change.Outlets;
        for (int index = 0; outlets != 0; index++, outlets >>= 1)
        {
            if ((outlets & 1) != 0)
                _delivered[index].Record(timeUs, system.OutletDeliveredM3(index));
        }
    }

    /// <summary>A point of everything: where a run begins, and where it ends.</summary>
    public void RecordAll(LubricationSystem system)
    {
        ulong pistons = ulong.MaxValue >> (64 - _travel.Length - _injected.Length);
        System.UInt128 outlets = System.UInt128.MaxValue >> (128 - _delivered.Length);
        OnEvent(system, system.NowUs, new PlantChange(PlantQuantities.All, pistons, outlets));
    }

    // The pin of a visual stroke indicator stands on the piston itself.
    private void RecordPiston(long timeUs, int index, double travel)
    {
        _travel[index].Record(timeUs, travel);
        _indicators[index]?.Record(timeUs, travel);
    }

    private static Signal?[] DefineIndicators(Trace trace, PlantDescription plant)
    {
        HashSet<string?> fitted = [plant.Divider.IndicatorSection, .. plant.Secondaries.Select(secondary => secondary.Divider.IndicatorSection)];
        return plant.AllSections
            .Select(section => fitted.Contains(section.Name) ? trace.Define("indicator." + section.Name, SignalKind.Linear, "1") : null)
            .ToArray();
    }

    private static Signal[] Define(Trace trace, string prefix, string unit, IEnumerable<string> names) =>
        names.Select(name => trace.Define(prefix + name, SignalKind.Linear, unit)).ToArray();
}
