using System;
using System.Linq;
using LubeController.Board;
using LubeController.Core;
using LubeController.Emulator.Storage;
using LubeController.Plant;
using LubeController.Plant.Description;

namespace LubeController.Emulator;

/// <summary>
/// Couples the deployed main loop to a simulated plant on one virtual clock. The loop's own wait moves the world: to the
/// next tick, or, where quiet time is skipped, to the first tick at which the core, its inputs, the plant or the driver
/// can change anything.
/// </summary>
public sealed class Bench : IBoard
{
    private const long RestartUs = 1_000_000;
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
    private readonly FlashStorage _storage = new(MemoryLayout.UsualBlocks, MemoryLayout.UsualBlockLength);
    private long _powerUpUs;
    private int _scannedLevels;
    private int _scannedTemperature;
    private long _revolutionsTaken;
    private long _shaftPulsesTaken;
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
        _setup = setup;
        _driver = driver;
        _periodUs = setup.ScanPeriodMs * 1000L;
        Plant = new LubricationSystem(setup.Plant, setup.Seed)
        {
            SupplyIsRead = setup.Settings.Is(SettingField.SupplyMeasured),
            TemperatureIsRead = setup.Settings.Is(SettingField.ColdJudged) || setup.Settings.RestMode == RestMode.Rule,
        };
        _wavesAtStart = Plant.Waves;
        _startedMidTravel = setup.Plant.AllSections.Any(section => section.InitialTravel is > 0.0 and < 1.0);
        Controls = new BenchControls();
        (_coreRecorder, _plantRecorder) = MakeRecorders(Trace, setup.Plant);
        Plant.Observer = _plantRecorder;
        _plantRecorder.RecordAll(Plant);
        _wiringRecorder = MakeWiringRecorder(Trace, Plant);
        _plantRecorder.Wiring = _wiringRecorder;
        _wiringRecorder?.Follow(0, _dropped, beats: false);
    }

    /// <summary>The simulated plant.</summary>
    public LubricationSystem Plant { get; }

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
    public long TicksCovered => (NowUs / _periodUs) + 1;

    /// <summary>Whether the run was broken off at its scan bound.</summary>
    public bool BoundReached { get; private set; }

    /// <summary>Kicks of the board's watchdog; one for each completed scan.</summary>
    public long WatchdogKicks { get; private set; }

    /// <summary>Exceptions that the main loop caught.</summary>
    public int LoopFaults { get; private set; }

    /// <inheritdoc/>
    public uint NowMs => unchecked(_setup.ClockStartMs + (uint)((NowUs - _powerUpUs) / 1000));

    /// <inheritdoc/>
    public ResetCause ResetCause { get; private set; }

    /// <inheritdoc/>
    public int LateMs => 0;

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

            PowerUp();
            _loop!.Run();
            if (_loop.Faults > 0)
                RestartBoard(_loop.Faults);
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
        Sense(inputs);
        CountShaft(inputs);
        if (_setup.Settings.Is(SettingField.PumpRevolutionsFitted))
            inputs.PumpRevolutions = (int)Math.Min(Plant.PumpRevolutions - _revolutionsTaken, int.MaxValue);
        inputs.PumpRevolutionAgeMs = 0;
        _revolutionsTaken = Plant.PumpRevolutions;
        _scannedLevels = inputs.Levels;
        _scannedTemperature = inputs.TemperatureDeciC;
        _coreRecorder.RecordInputs(NowUs, inputs);
    }

    /// <inheritdoc/>
    public void WriteOutputs(Outputs outputs)
    {
        ArgumentNullException.ThrowIfNull(outputs);
        _coreRecorder.RecordCore(NowUs, _loop!.Core);
        _coreRecorder.RecordOutputs(NowUs, outputs);
        Plant.SetPumpContact(outputs.Pump);
        Plant.SetVentValve(outputs.VentValve);
        _wiringRecorder?.Follow(NowUs, outputs, beats: true);
    }

    /// <inheritdoc/>
    public void KickWatchdog() => WatchdogKicks++;

    /// <inheritdoc/>
    public void Restart() => Trace.Note(NowUs, "board", "restarts after a fault in the main loop");

    /// <inheritdoc/>
    public bool WaitForNextScan(Controller core, int mostMs)
    {
        ArgumentNullException.ThrowIfNull(core);
        ScansExecuted++;
        _driver.AfterScan(this);
        if (ScansExecuted >= _setup.ScanBound)
        {
            BoundReached = true;
            return false;
        }

        Controls.Obey(core, alarm => Trace.Note(NowUs, "press", $"shelving {AlarmTable.NameOf(alarm)} refused"));
        return MoveWorld(core, mostMs);
    }

    /// <summary>Somebody has switched it on, and its supply lets it work.</summary>
    private bool Powered => Controls.Power && Plant.ControlPowered;

    private static (CoreRecorder Core, PlantRecorder Plant) MakeRecorders(Trace trace, PlantDescription plant) =>
        (new CoreRecorder(trace, plant.CycleSwitches.Select(cycle => cycle.Name).ToArray()), new PlantRecorder(trace, plant));

    private static WiringRecorder? MakeWiringRecorder(Trace trace, LubricationSystem plant) =>
        plant.Wiring is null ? null : new WiringRecorder(trace, plant);

    private static long TickAtOrAfter(long timeUs, long periodUs)
    {
        long ticks = timeUs / periodUs;
        if (ticks * periodUs < timeUs)
            ticks++;
        return ticks > long.MaxValue / 2 / periodUs ? long.MaxValue : ticks * periodUs;
    }

    private void PowerUp()
    {
        // The board's first scan falls on the common grid of ticks, so that skipping does not depend on when power came.
        Plant.AdvanceTo(Math.Min(TickAtOrAfter(NowUs, _periodUs), _setup.DurationUs));
        _powerUpUs = NowUs;
        _shaftPulsesTaken = Plant.HasShaft ? Plant.ShaftPulsesAt(NowUs) : 0;
        _revolutionsTaken = Plant.PumpRevolutions;
        Controls.Forget();
        _coreRecorder.Begin();
        _loop = new MainLoop(this, _storage, _setup.Settings, _setup.MakeRule?.Invoke());
        ResetCause = ResetCause.PowerOn;
        Trace.Note(NowUs, "power", _loop.StateRestored ? "up, saved state restored" : "up, no saved state");
    }

    /// <summary>A board that restarts is away for a while; without that, one that faults at once would never let time pass.</summary>
    private void RestartBoard(int faults)
    {
        LoopFaults += faults;
        ResetCause = ResetCause.LoopFault;
        _wiringRecorder?.Follow(NowUs, _dropped, beats: false);
        Plant.AdvanceTo(Math.Min(NowUs + RestartUs, _setup.DurationUs));
        Act();
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
            inputs.ShaftPulses = Controls.TakeShaftPulses();
            inputs.ShaftPulseAgeMs = 0;
            return;
        }

        if (!Plant.HasShaft)
            return;
        long pulses = Plant.ShaftPulsesAt(NowUs);
        inputs.ShaftPulses = (int)Math.Min(pulses - _shaftPulsesTaken, int.MaxValue);
        if (inputs.ShaftPulses > 0)
            inputs.ShaftPulseAgeMs = (int)Math.Min((NowUs - Plant.LastShaftPulseUs(NowUs)) / 1000, int.MaxValue);
        _shaftPulsesTaken = pulses;
    }

    private void DropOutputs()
    {
        _coreRecorder.RecordOutputs(NowUs, _dropped);
        _wiringRecorder?.Follow(NowUs, _dropped, beats: false);
        Plant.SetPumpContact(false);
        Plant.SetVentValve(false);
        Trace.Note(NowUs, "power", "off");
    }

    private void RunUnpowered()
    {
        while (NowUs < _setup.DurationUs && !Powered)
        {
            Plant.AdvanceTo(Math.Min(Math.Min(_driver.NextActionUs, Plant.NextSupplyUs), _setup.DurationUs));
            Act();
        }
    }

    private void Act()
    {
        if (_driver.NextActionUs > NowUs)
            return;
        _driver.Act(this);
        _wiringRecorder?.Record(NowUs);
    }

    /// <summary>Moves plant and driver to the next tick at which the core must scan.</summary>
    private bool MoveWorld(Controller core, int mostMs)
    {
        long start = NowUs;
        int quietMs = _setup.SkipQuietTime ? Math.Min(core.NextDeadlineMs, mostMs) : _setup.ScanPeriodMs;
        long due = TickAtOrAfter(Math.Max(start + (quietMs * 1000L), start + _periodUs), _periodUs);
        Act();
        if (!Powered)
            return false;
        if (InputsChanged(core))
            due = start + _periodUs;
        while (true)
        {
            long next = Math.Min(due, ShaftTick(core, start));
            long world = Math.Min(Plant.NextEventUs, _driver.NextActionUs);
            next = Math.Min(next, PressureTick(core, start, Math.Min(world, next)));
            if (world > next || world > _setup.DurationUs)
                return ReachTick(next);
            Plant.AdvanceTo(world);
            Act();
            if (!Powered)
                return false;
            if (InputsChanged(core))
                due = Math.Min(due, Math.Max(TickAtOrAfter(world, _periodUs), start + _periodUs));
        }
    }

    private bool ReachTick(long tickUs)
    {
        Plant.AdvanceTo(Math.Min(tickUs, _setup.DurationUs));
        return tickUs <= _setup.DurationUs;
    }

    private bool InputsChanged(Controller core)
    {
        if (!_setup.SkipQuietTime)
            return false;
        Sense(_probe);
        bool revolved = _setup.Settings.Is(SettingField.PumpRevolutionsFitted) && Plant.PumpRevolutions != _revolutionsTaken;
        return _probe.Levels != _scannedLevels || _probe.TemperatureDeciC != _scannedTemperature || revolved || Controls.Asks || Controls.GivesShaftPulses
            || (Controls.IsHeld(HandInput.Pressure) && (_probe.PressureMbar < core.QuietPressureLowMbar || _probe.PressureMbar > core.QuietPressureHighMbar))
            || _probe.SupplyMv < core.QuietSupplyLowMv || _probe.SupplyMv > core.QuietSupplyHighMv;
    }

    /// <summary>The tick at which the shaft has given the pulses the core waits for.</summary>
    private long ShaftTick(Controller core, long start)
    {
        int pulses = core.NextDeadlineShaftPulses;
        if (!_setup.SkipQuietTime || !Plant.HasShaft || Controls.IsHeld(HandInput.ShaftPulses) || pulses == Saturating.Never)
            return long.MaxValue;
        long at = Plant.TimeOfShaftPulseUs(_shaftPulsesTaken + pulses);
        return at == long.MaxValue ? at : Math.Max(TickAtOrAfter(at, _periodUs), start + _periodUs);
    }

    /// <summary>The first tick up to a time at which the transmitter leaves the band in which nothing changes. Pressure moves in one straight line until the plant's next event.</summary>
    private long PressureTick(Controller core, long start, long untilUs)
    {
        if (!_setup.SkipQuietTime || !_setup.Plant.HasPressureTransmitter || Controls.IsHeld(HandInput.Pressure))
            return long.MaxValue;
        long first = Math.Max(TickAtOrAfter(NowUs, _periodUs), start + _periodUs);
        long last = Math.Min(untilUs, _setup.DurationUs) / _periodUs * _periodUs;
        if (first > last || IsQuiet(core, last))
            return first <= last && !IsQuiet(core, first) ? first : long.MaxValue;
        while (first < last)
        {
            long middle = (first + last) / 2 / _periodUs * _periodUs;
            if (IsQuiet(core, middle))
                first = middle + _periodUs;
            else
                last = middle;
        }

        return first;
    }

    private bool IsQuiet(Controller core, long timeUs)
    {
        int pressure = Millibar(Plant.TransmitterPressurePaAt(timeUs));
        return pressure >= core.QuietPressureLowMbar && pressure <= core.QuietPressureHighMbar;
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
