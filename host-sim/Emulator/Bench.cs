using System;
using System.Linq;
using LubeController.Board;
using LubeController.Core;
using LubeController.Emulator.Platform;
using LubeController.Emulator.Storage;
using LubeController.Plant;
using LubeController.Plant.Description;

namespace LubeController.Emulator;

/// <summary>
/// Couples the deployed main loop to a simulated plant on one virtual clock. The loop's own wait moves the world: to the
/// next tick, or, where quiet time is skipped, to the first tick at which the core, its inputs, the plant or the driver
/// can change anything.
/// </summary>
public sealed partial class Bench : IBoard
{
    internal const int StorageBlocks = MemoryLayout.UsualBlocks;
    internal const int StorageBlockLength = MemoryLayout.UsualBlockLength;

    /// <summary>For how long a board that restarts by itself is away, milliseconds.</summary>
    public const int RestartMs = 1_000;

    private const long RestartUs = RestartMs * 1_000L;
    private const double MostVolumeError = 1e-9;

    private readonly BenchSetup _setup;
    private readonly IBenchDriver _driver;
    private readonly CoreRecorder _coreRecorder;
    private readonly PlantRecorder _plantRecorder;
    private readonly WiringRecorder? _wiringRecorder;
    private readonly Outputs _dropped = new();
    private readonly long _periodUs;
    private readonly int _wavesAtStart;
    private readonly bool _startedMidTravel;
    private readonly Inputs _probe = new();
    private readonly Action<AlarmId> _tellRefusal;
    private readonly FlashStorage _storage;
    private long _powerUpMs;
    private int _scannedLevels;
    private int _scannedTemperature;
    private long _revolutionsTaken;
    private long _shaftPulsesTaken;
    private int _lateMs;
    private long _tick;
    private MainLoop? _loop;

    /// <summary>Sets up a bench.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Scan period or duration outside its range.</exception>
    public Bench(BenchSetup setup, IBenchDriver driver)
    {
        ArgumentNullException.ThrowIfNull(setup);
        ArgumentNullException.ThrowIfNull(driver);
        ArgumentOutOfRangeException.ThrowIfLessThan(setup.ScanPeriodMs, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(setup.ScanPeriodMs, 1000);
        ArgumentOutOfRangeException.ThrowIfLessThan(setup.DurationUs, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(setup.WatchdogMs, setup.ScanPeriodMs);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(setup.WatchdogMs, 60_000);
        ArgumentOutOfRangeException.ThrowIfNegative(setup.ScanJitterUs);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(setup.ScanJitterUs, 500_000);
        ArgumentOutOfRangeException.ThrowIfLessThan(setup.PinQueueDepth, BenchSetup.LeastPinQueueDepth);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(setup.PinQueueDepth, BenchSetup.MostPinQueueDepth);
        _setup = setup;
        _driver = driver;
        _periodUs = setup.ScanPeriodMs * 1000L;
        _storage = new FlashStorage(StorageBlocks, StorageBlockLength, setup.Seed);
        Platform = new BoardPlatform(setup, _storage, () => NowUs);
        Plant = new LubricationSystem(setup.Plant, setup.Seed)
        {
            SupplyIsRead = setup.Settings.Is(SettingField.SupplyMeasured),
            TemperatureIsRead = setup.Settings.Is(SettingField.ColdJudged) || setup.Settings.RestMode == RestMode.Rule,
        };
        _wavesAtStart = Plant.Waves;
        _startedMidTravel = setup.Plant.AllSections.Any(section => section.InitialTravel is > 0.0 and < 1.0);
        Controls = new BenchControls();
        _tellRefusal = alarm => Trace.Note(NowUs, "press", $"shelving {AlarmTable.Spec(alarm).Name} refused");
        (_coreRecorder, _plantRecorder) = MakeRecorders(Trace, setup.Plant);
        Plant.Observer = _plantRecorder;
        _plantRecorder.RecordAll(Plant);
        _wiringRecorder = MakeWiringRecorder(Trace, Plant);
        _plantRecorder.Wiring = _wiringRecorder;
        _wiringRecorder?.Follow(0, _dropped, beats: false);
    }

    /// <summary>The simulated plant.</summary>
    public LubricationSystem Plant { get; }

    /// <summary>The microcontroller and what is wrong with it.</summary>
    public BoardPlatform Platform { get; }

    /// <summary>Buttons, switches and signals that people and other machines work.</summary>
    public BenchControls Controls { get; }

    /// <summary>What was recorded so far.</summary>
    public Trace Trace { get; } = new();

    /// <summary>The core under test; null before the first power-up.</summary>
    public Controller? Core => _loop?.Core;

    /// <summary>The board's non-volatile memory.</summary>
    public FlashStorage Storage => _storage;

    /// <summary>Virtual time, microseconds since the start of the run.</summary>
    public long NowUs => Plant.NowUs;

    /// <summary>Scans executed.</summary>
    public long ScansExecuted { get; private set; }

    /// <summary>Scan ticks that lie in the time run so far, executed or skipped.</summary>
    public long TicksCovered => (Platform.Clock.BoardUs(NowUs) / _periodUs) + 1;

    /// <summary>Whether the run was broken off at its scan bound.</summary>
    public bool BoundReached { get; private set; }

    /// <summary>Exceptions that the main loop caught.</summary>
    public int LoopFaults { get; private set; }

    /// <inheritdoc/>
    public uint NowMs => unchecked(_setup.ClockStartMs + (uint)((Platform.Clock.BoardUs(NowUs) / 1000) - _powerUpMs));

    /// <inheritdoc/>
    public ResetCause ResetCause { get; private set; }

    /// <inheritdoc/>
    public int LateMs => Controls.Held(HandInput.ScanLate) is not { } late ? _lateMs : late != 0 ? int.MaxValue : 0;

    /// <inheritdoc/>
    public bool HasWallTime => _setup.WallTimeAtStartS != 0;

    /// <inheritdoc/>
    public uint WallTimeS => unchecked(_setup.WallTimeAtStartS + (uint)(NowUs / 1_000_000));

    /// <summary>The signals that a run of a plant records, without points.</summary>
    public static Trace DefineSignals(PlantDescription plant)
    {
        ArgumentNullException.ThrowIfNull(plant);
        var trace = new Trace();
        MakeRecorders(trace, plant);
        if (plant.Wiring != null)
            MakeWiringRecorder(trace, new LubricationSystem(plant, 0));
        return trace;
    }

    /// <summary>Runs to the end of the set duration.</summary>
    /// <returns>The trace.</returns>
    public Trace Run()
    {
        Act();
        while (NowUs < _setup.DurationUs && !BoundReached)
        {
            if (!Powered)
            {
                RunUnpowered();
                continue;
            }

            // The board's first scan falls on the common grid of ticks, so that skipping does not depend on when power came.
            _tick = Platform.Clock.TickAtOrAfter(NowUs);
            PassTime(Platform.Clock.TimeOf(_tick));
            if (Powered)
            {
                PowerUp();
                RunLoop();
            }

            if (!Powered)
                DropOutputs();
        }

        _plantRecorder.RecordAll(Plant);
        Trace.End(NowUs);
        CheckVolumes();
        return Trace;
    }

    /// <inheritdoc/>
    public void ReadInputs(Inputs inputs)
    {
        ArgumentNullException.ThrowIfNull(inputs);
        if (Platform.LoopThrows)
        {
            Platform.Throws++;
            throw new InvalidOperationException("a driver of the board threw, as it was told to");
        }

        // The main loop tells this one after the inputs are read: what is left of the last scan is no input.
        inputs.ScanLate = false;
        Sense(inputs);
        CountShaft(inputs);
        CountRevolutions(inputs);
        _scannedLevels = inputs.Levels;
        _scannedTemperature = inputs.TemperatureDeciC;
        _coreRecorder.RecordInputs(NowUs, inputs);
    }

    /// <inheritdoc/>
    public void WriteOutputs(Outputs outputs)
    {
        ArgumentNullException.ThrowIfNull(outputs);
        bool completed = _loop!.Faults == 0;
        if (completed)
            _coreRecorder.RecordCore(NowUs, _loop.Core);
        _coreRecorder.RecordOutputs(NowUs, outputs);
        _shown = outputs;
        Plant.SetPumpContact(outputs.Pump);
        Plant.SetVentValve(outputs.VentValve);
        _wiringRecorder?.Follow(NowUs, outputs, beats: completed);
    }

    /// <inheritdoc/>
    public void KickWatchdog() => Platform.Watchdog.Kick(NowUs);

    /// <inheritdoc/>
    public void Restart() => Trace.Note(NowUs, "board", "restarts after a fault in the main loop");

    /// <inheritdoc/>
    public bool WaitForNextScan(Controller core, int mostMs)
    {
        ArgumentNullException.ThrowIfNull(core);
        ScansExecuted++;
        Platform.Queue.Clear();
        Platform.Timing.Scanned();
        _markHolds = false;
        _driver.AfterScan(this);
        if (ScansExecuted >= _setup.ScanBound)
        {
            BoundReached = true;
            return false;
        }

        if (_storage.PowerLost)
            return false;
        Controls.Obey(core, _tellRefusal);
        return MoveWorld(core, mostMs);
    }

    /// <summary>Somebody has switched it on, and its supply lets it work.</summary>
    private bool Powered => Controls.Power && Plant.ControlPowered;

    private static (CoreRecorder Core, PlantRecorder Plant) MakeRecorders(Trace trace, PlantDescription plant) =>
        (new CoreRecorder(trace, plant.CycleSwitches.Select(cycle => cycle.Name).ToArray()), new PlantRecorder(trace, plant));

    private static WiringRecorder? MakeWiringRecorder(Trace trace, LubricationSystem plant) =>
        plant.Wiring is null ? null : new WiringRecorder(trace, plant);

    private void PowerUp()
    {
        _powerUpMs = Platform.Clock.BoardUs(NowUs) / 1000;
        _skippedUs = -1;
        _markHolds = false;
        _lateMs = 0;
        _shaftPulsesTaken = Plant.HasShaft ? Plant.ShaftPulsesAt(NowUs) : 0;
        _revolutionsTaken = Plant.PumpRevolutions;
        _shown = _dropped;
        Controls.Forget();
        Platform.Queue.Clear();
        Platform.Watchdog.Arm(NowUs);
        NoteSwitches();
        _shaftRushes = ShaftMayOverrunQueue();
        _coreRecorder.Begin();
        ResetCause = _nextCause;
        _storage.PowerBack();
        Platform.NoteStart();
        _loop = new MainLoop(this, _storage, _setup.Settings, _setup.MakeRule?.Invoke());
        Trace.Note(NowUs, "power", _loop.StateRestored ? "up, saved state restored" : "up, no saved state");
        if (ResetCause != ResetCause.PowerOn)
            Trace.Note(NowUs, "board", "started after " + CauseText(ResetCause));
    }

    /// <summary>
    /// Asserted on every run: no lubricant appears or vanishes, and the trip points were crossed as often as the pistons'
    /// displacement says, give or take one cycle, where one wave goes round from a start with every piston at an end.
    /// </summary>
    private void CheckVolumes()
    {
        double error = Plant.Balance().RelativeError;
        if (error > MostVolumeError)
            throw new InvalidOperationException($"Plant '{_setup.Plant.Name}': the volume balance is off by {error:R} of what was pumped, more than {MostVolumeError:R}.");
        if (_wavesAtStart != 1 || _startedMidTravel || Plant.Waves != 1)
        {
            Trace.Note(NowUs, "divider", $"{Plant.Waves} waves, {_wavesAtStart} at the start{(_startedMidTravel ? ", pistons in mid-travel" : "")}: trip crossings are not compared with displacement");
            return;
        }

        for (int index = 0; index < Plant.CycleSwitchCount; index++)
        {
            double difference = Plant.TripVolumeDifferenceM3(index);
            if (difference > Plant.CycleVolumeM3(index) * (1.0 + MostVolumeError))
                throw new InvalidOperationException($"Plant '{_setup.Plant.Name}': trip crossings of switch {index + 1} and displaced volume differ by {difference:R} m3, more than one cycle.");
        }
    }

    private void CountShaft(Inputs inputs)
    {
        if (Controls.IsHeld(HandInput.ShaftPulses))
        {
            inputs.ShaftPulses = Controls.Take(HandInput.ShaftPulses);
            inputs.ShaftPulseAgeMs = 0;
            return;
        }

        if (!Plant.HasShaft)
            return;
        long pulses = Plant.ShaftPulsesAt(NowUs);
        inputs.ShaftPulses = (int)Math.Min(pulses - _shaftPulsesTaken - LostPulses(pulses), int.MaxValue);
        if (inputs.ShaftPulses > 0)
            inputs.ShaftPulseAgeMs = AgeMs(Plant.LastShaftPulseUs(NowUs));
        _shaftPulsesTaken = pulses;
    }

    private void CountRevolutions(Inputs inputs)
    {
        long revolutions = Plant.PumpRevolutions - _revolutionsTaken;
        _revolutionsTaken = Plant.PumpRevolutions;
        inputs.PumpRevolutionAgeMs = 0;
        if (Controls.IsHeld(HandInput.PumpRevolutions))
            inputs.PumpRevolutions = Controls.Take(HandInput.PumpRevolutions);
        else if (_setup.Settings.Is(SettingField.PumpRevolutionsFitted))
            inputs.PumpRevolutions = (int)Math.Min(revolutions, int.MaxValue);
    }

    /// <summary>How long ago something was by the board's own clock, whose milliseconds the core counts.</summary>
    private int AgeMs(long timeUs)
    {
        long nowUs = Platform.Clock.BoardUs(NowUs) / 1000 * 1000;
        return (int)Math.Clamp((nowUs - Platform.Clock.BoardUs(timeUs)) / 1000, 0, int.MaxValue);
    }

    private static int Millibar(double pressurePa) => (int)Math.Floor(pressurePa / 100.0);

    private void Sense(Inputs inputs)
    {
        for (int index = 0; index < Plant.CycleSwitchCount; index++)
            inputs.SetCycleSwitch(index, Plant.CycleSwitchOn(index));
        inputs.LevelLow = Plant.LevelLow;
        inputs.LevelEmpty = Plant.LevelEmpty;
        inputs.PressureSwitch = Plant.PressureSwitchOn;
        inputs.PressureMbar = _setup.Plant.HasPressureTransmitter ? Millibar(Plant.TransmitterPressurePa) : 0;
        inputs.TemperatureDeciC = (int)Math.Round((Plant.TemperatureK - 273.15) * 10.0, MidpointRounding.AwayFromZero);
        inputs.PumpOverload = Plant.OverloadTripped;
        inputs.SupplyMv = (int)Math.Floor(Plant.ControlBaseVoltageV * 1000.0);
        Controls.CopyTo(inputs);
        Controls.Override(inputs);
    }
}
