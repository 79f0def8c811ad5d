using System;
using LubeController.Board;
using LubeController.Core;
using LubeController.Emulator.Platform;
using LubeController.Emulator.Storage;
using LubeController.Plant;
using LubeController.Plant.Description;

namespace LubeController.Emulator;

/// <summary>
/// Couples the deployed main loop to a simulated plant on one virtual clock. While the loop waits, the world moves to the
/// next tick, or, where quiet time is skipped, to the first tick at which the core, its inputs, the plant or the driver
/// can change anything.
/// </summary>
public sealed class Bench
{
    /// <summary>For how long a board that restarts by itself is away, milliseconds.</summary>
    public const int RestartMs = 1_000;

    private readonly long _periodUs;
    private readonly BenchRecorders _recorders;
    private readonly VolumeCheck _volumes;
    private readonly VirtualBoard _board;
    private readonly BoardRun _run;

    /// <summary>Sets up a bench.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Scan period or duration outside its range.</exception>
    public Bench(BenchSetup setup, IBenchDriver driver)
    {
        ArgumentNullException.ThrowIfNull(setup);
        ArgumentNullException.ThrowIfNull(driver);
        setup.Check();
        _periodUs = setup.ScanPeriodMs * 1000L;
        Storage = new FlashStorage(MemoryLayout.UsualBlocks, MemoryLayout.UsualBlockLength, setup.Seed);
        Platform = new BoardPlatform(setup.Board, Storage, () => NowUs);
        Plant = new LubricationSystem(setup.Plant, setup.Seed)
        {
            SupplyIsRead = setup.Settings.Is(SettingField.SupplyMeasured),
            TemperatureIsRead = setup.Settings.Is(SettingField.ColdJudged) || setup.Settings.RestMode == RestMode.Rule,
        };
        Controls = new BenchControls();
        AlarmRequests = new AlarmRequests(Controls);
        _volumes = new VolumeCheck(Plant);
        _recorders = new BenchRecorders(Trace, setup.Plant);
        Plant.Observer = _recorders.Plant;
        _recorders.Plant.RecordAll(Plant);
        _recorders.AddWiring(Plant);
        var pins = new OutputPins(Plant, _recorders);
        pins.ReleaseSupervisory();

        var ticks = new ScanTicks(Platform.Clock);
        var events = new PinEvents(setup, Plant, Platform, Controls, ticks, Trace);
        var sampler = new InputSampler(setup, Plant, Controls, events);
        var world = new BenchWorld(this, driver, setup.DurationUs, events, _recorders.Wiring);
        var wait = new ScanWait(world, Platform, new QuietTime(setup, Plant, Platform, Controls, AlarmRequests, sampler, events), ticks);
        _board = new VirtualBoard(setup, this, world, sampler, pins, _recorders, events, ticks, wait);
        _run = new BoardRun(this, world, _board, pins, ticks, wait);
    }

    /// <summary>The simulated plant.</summary>
    public LubricationSystem Plant { get; }

    /// <summary>The microcontroller and what is wrong with it.</summary>
    public BoardPlatform Platform { get; }

    /// <summary>Buttons, switches and signals that people and other machines work.</summary>
    public BenchControls Controls { get; }

    /// <summary>What people ask the controller to do about what is shown of an alarm.</summary>
    public AlarmRequests AlarmRequests { get; }

    /// <summary>What was recorded so far.</summary>
    public Trace Trace { get; } = new();

    /// <summary>The core under test; null before the first power-up.</summary>
    public Controller? Core => _board.Loop?.Core;

    /// <summary>The board's non-volatile memory.</summary>
    public FlashStorage Storage { get; }

    /// <summary>Virtual time, microseconds since the start of the run.</summary>
    public long NowUs => Plant.NowUs;

    /// <summary>The board's own millisecond clock, which may wrap.</summary>
    public uint NowMs => _board.NowMs;

    /// <summary>Why the board started last.</summary>
    public ResetCause ResetCause => _board.ResetCause;

    /// <summary>Scans executed.</summary>
    public long ScansExecuted => _board.ScansExecuted;

    /// <summary>Scan ticks that lie in the time run so far, executed or skipped.</summary>
    public long TicksCovered => (Platform.Clock.BoardUs(NowUs) / _periodUs) + 1;

    /// <summary>Whether the run was broken off at its scan bound.</summary>
    public bool BoundReached => _board.BoundReached;

    /// <summary>Resets of the board by its own watchdog.</summary>
    public int WatchdogResets => _run.WatchdogResets;

    /// <summary>Exceptions that the main loop caught.</summary>
    public int LoopFaults => _run.LoopFaults;

    /// <summary>The signals that a run of a plant records, without points.</summary>
    public static Trace DefineSignals(PlantDescription plant)
    {
        ArgumentNullException.ThrowIfNull(plant);
        var trace = new Trace();
        var recorders = new BenchRecorders(trace, plant);
        if (plant.Wiring != null)
            recorders.AddWiring(new LubricationSystem(plant, 0));
        return trace;
    }

    /// <summary>Runs to the end of the set duration.</summary>
    /// <returns>The trace.</returns>
    public Trace Run()
    {
        _run.Run();
        _recorders.Plant.RecordAll(Plant);
        Trace.End(NowUs);
        _volumes.Check(Trace);
        return Trace;
    }
}
