using System;
using System.Collections.Generic;
using System.Linq;
using System.Threading;
using LubeController.Board;
using LubeController.Core;
using LubeController.Emulator.Storage;

namespace LubeController.Analysis.PowerCuts;

/// <summary>
/// One life of a board. The main loop writes through a layer that takes down what it is promised, then perhaps through one
/// with a fault, and at last into the storage; there each write is first cut at every byte in a copy, and each copy is started.
/// </summary>
internal sealed class SweepRun
{
    private static readonly TearRest[] Rests = Enum.GetValues<TearRest>();

    private readonly PowerCutSetup _setup;
    private readonly int _job;
    private readonly CancellationToken _cancel;
    private readonly FlashStorage _live;
    private readonly FlashStorage _trial;
    private readonly IBlockStorage _trialStorage;
    private readonly IBlockStorage _storage;
    private readonly SweepBoard _board;
    private readonly TrialBoard _after = new();
    private readonly Promises _kept;
    private readonly RestProbe _probe;
    private readonly MemoryLayout _layout;
    private readonly List<PowerCutViolation> _violations = [];
    private readonly LogEntry _entry = new();
    private readonly HashSet<uint> _found = [];
    private Promises? _next;
    private MainLoop? _loop;
    private int _bootWrites;
    private bool _bootStands;
    private int _settingsWrites;
    private long _number;
    private WriteKind _kind;
    private long _swept;

    public SweepRun(PowerCutSetup setup, int job, CancellationToken cancel)
    {
        _setup = setup;
        _job = job;
        _cancel = cancel;
        _layout = new MemoryLayout(setup.BlockCount, setup.BlockLength);
        _live = new FlashStorage(setup.BlockCount, setup.BlockLength);
        _trial = new FlashStorage(setup.BlockCount, setup.BlockLength, 7);
        IBlockStorage tearing = new CutLayer(this);
        _storage = new PromiseLayer(this, setup.Layer?.Invoke(tearing) ?? tearing);
        _trialStorage = setup.Layer?.Invoke(_trial) ?? _trial;
        _board = new SweepBoard(setup) { PumpOn = PumpOn };
        _kept = new Promises(_layout);
        _probe = new RestProbe(setup.Settings, setup.MakeRule);
    }

    public Dictionary<WriteKind, long> Writes { get; } = Enum.GetValues<WriteKind>().ToDictionary(kind => kind, _ => 0L);

    public Dictionary<WriteKind, long> WritesCut { get; } = Enum.GetValues<WriteKind>().ToDictionary(kind => kind, _ => 0L);

    public Dictionary<WriteKind, long> Cuts { get; } = Enum.GetValues<WriteKind>().ToDictionary(kind => kind, _ => 0L);

    public IReadOnlyList<PowerCutViolation> Violations => _violations;

    public int MostRestBackMs { get; private set; }

    public int Doses { get; private set; }

    public int Starts { get; private set; }

    public void Run()
    {
        while (!_board.Over && _violations.Count < PowerCutSweep.MostViolations)
        {
            _cancel.ThrowIfCancellationRequested();
            _loop = null;
            _bootWrites = 0;
            _bootStands = false;
            _board.Begin();
            _loop = new MainLoop(_board, _storage, _setup.Settings, _setup.MakeRule?.Invoke());
            Starts++;
            _board.PowerComesBack();
            _loop.Run();
            while (_board.Stores && _loop.Faults == 0)
            {
                Store();
                _loop.Run();
            }

            Doses = Math.Max(Doses, _loop.Core.DosesCompleted);
        }
    }

    private void Store()
    {
        var settings = new Settings();
        settings.CopyFrom(_loop!.Memory.Settings.Values);
        settings[SettingField.RestMs] = Math.Min(_setup.Settings[SettingField.RestMs] + (1000 * _board.TakeStore()), SettingTable.LongestMs);
        _settingsWrites = 0;
        _loop.StoreSettings(settings);
    }

    private void PumpOn()
    {
        if (!_bootStands)
            Violate(-1, TearRest.Old, "the pump runs although no boot record of this start was written");
    }

    private WriteKind KindOf(int block, bool program, bool erased)
    {
        switch (_layout.KindOf(block))
        {
            case BlockKind.Settings:
                return _settingsWrites++ % 2 == 0 ? WriteKind.Settings : WriteKind.SettingsMirror;
            case BlockKind.Boot:
                _bootWrites++;
                return _loop != null ? WriteKind.BootFault : _bootWrites == 1 ? WriteKind.BootStart : WriteKind.BootTold;
            case BlockKind.State:
                return _loop == null ? WriteKind.StateStart : _loop.Saves.IntervalIsOver ? WriteKind.StateInterval : WriteKind.StateEvent;
            default:
                return program ? WriteKind.LogEntry : erased ? WriteKind.LogTurn : WriteKind.LogWrap;
        }
    }

    private bool Take(int block, int at, byte[] buffer, int length, bool program)
    {
        _number++;
        _kind = KindOf(block, program, Erased(block));
        Writes[_kind]++;
        if (Writes[_kind] <= _setup.MostOfKind && _swept++ % _setup.Jobs == _job && _violations.Count < PowerCutSweep.MostViolations)
            Sweep(block, at, buffer, length, program);
        bool written = program ? _live.Program(block, at, buffer, length) : _live.Write(block, buffer, length);
        if (written && _layout.KindOf(block) == BlockKind.Boot)
            _bootStands = true;
        return written;
    }

    private bool Erased(int block) => _live.Block(block)[..32].IndexOfAnyExcept((byte)0xFF) < 0;

    private void Sweep(int block, int at, byte[] buffer, int length, bool program)
    {
        var cut = new Cut(_kept, _next ?? _kept, _probe);
        JudgeRest(cut);
        WritesCut[_kind]++;
        bool copied = false;
        for (int byteCount = 0; byteCount <= length; byteCount++)
        {
            foreach (TearRest rest in Rests)
            {
                _cancel.ThrowIfCancellationRequested();
                _trial.TakeOver(_live, copied);
                copied = true;
                _trial.TearNextWriteAt(byteCount, rest);
                if (program)
                    _trial.Program(block, at, buffer, length);
                else
                    _trial.Write(block, buffer, length);
                _trial.PowerBack();
                Cuts[_kind]++;
                if (Judge(cut) is not { } wrong)
                    continue;
                Violate(byteCount, rest, wrong);
                if (_violations.Count >= PowerCutSweep.MostViolations)
                    return;
            }
        }
    }

    /// <summary>What was saved last may be behind the core at work by one save interval.</summary>
    private void JudgeRest(Cut cut)
    {
        if (_loop == null || _kept.State.Length == 0 || _setup.Settings.RestMode == RestMode.Rule)
            return;
        int live = _probe.RestLeftMs(RestProbe.Bytes(_loop.Core));
        int saved = _probe.RestLeftMs(cut.OldStarted);
        if (live < 0 || saved < 0)
            return;
        int back = saved - live;
        int most = _setup.Settings[SettingField.SaveIntervalMs];
        MostRestBackMs = Math.Max(MostRestBackMs, back);
        if (back < -_setup.Settings[SettingField.RestartDelayMs] || back > most)
            Violate(-1, TearRest.Old, $"a cut gives back {back} ms of rest, more than the save interval of {most} ms, or takes some");
    }

    /// <summary>Starts the copy twice, and says what does not hold.</summary>
    private string? Judge(Cut cut)
    {
        MainLoop loop;
        try
        {
            loop = new MainLoop(_after, _trialStorage, _setup.Settings, _setup.MakeRule?.Invoke());
        }
        catch (Exception reason) when (reason is not OutOfMemoryException)
        {
            return $"the start throws: {reason.Message}";
        }

        if (JudgeSettings(cut, loop) is { } settings)
            return settings;
        if (JudgeState(cut, loop) is { } state)
            return state;
        int starts = loop.Memory.Boot.Starts;
        if (starts != cut.Old.Starts + 1 && starts != cut.New.Starts + 1)
            return $"the boot record counts {starts} starts after {cut.Old.Starts} that were committed";
        if (JudgeLog(cut, loop) is { } log)
            return log;

        var second = new MainLoop(_after, _trialStorage, _setup.Settings, _setup.MakeRule?.Invoke());
        if (second.Core.Alarms.Stands(AlarmId.StorageCorrupt) && !loop.Core.Alarms.Stands(AlarmId.StorageCorrupt))
            return "the second start after the cut raises storage-corrupt";
        if ((loop.Core.Alarms.Standing & ~second.Core.Alarms.Standing) != 0 || second.Core.DosesCompleted != loop.Core.DosesCompleted)
            return "the second start after the cut has lost what the first one saved";
        int latched = second.Core.Alarms.Latched;
        second.RunOnce();
        return (latched & ~second.Core.Alarms.Latched) != 0 ? "the first scan after the cut clears a latch" : null;
    }

    private static string? JudgeSettings(Cut cut, MainLoop loop)
    {
        SettingsMemory settings = loop.Memory.Settings;
        if (settings.State != SettingsState.Stored)
            return $"the settings are {settings.State}";
        for (int field = 0; field < SettingField.Count && cut.Old.Settings.Length > 0; field++)
        {
            if (settings.Values[field] != cut.Old.Settings[field] && settings.Values[field] != cut.New.Settings[field])
                return $"setting '{SettingTable.Spec(field).Name}' is neither the old nor the new one";
        }

        return cut.Old.Settings.Length > 0 && !Same(settings.Values, cut.Old.Settings) && !Same(settings.Values, cut.New.Settings) ? "old and new settings are mixed" : null;
    }

    private static bool Same(Settings settings, int[] values)
    {
        for (int field = 0; field < values.Length; field++)
        {
            if (settings[field] != values[field])
                return false;
        }

        return true;
    }

    private static string? JudgeState(Cut cut, MainLoop loop)
    {
        AlarmList alarms = loop.Core.Alarms;
        if (alarms.Stands(AlarmId.StorageCorrupt))
            return "the cut raises storage-corrupt";
        int lost = cut.AlwaysLatched & ~alarms.Standing;
        for (int index = 0; index < AlarmTable.Count; index++)
        {
            if ((lost & (1 << index)) != 0)
                return $"committed alarm {AlarmTable.Spec((AlarmId)index).Name} is lost";
        }

        if (cut.FaultWaits && !alarms.Stands(AlarmId.LogicFault))
            return "a fault of the main loop that was marked raises no logic-fault";
        int doses = loop.Core.DosesCompleted;
        if (doses < cut.OldDoses)
            return $"the count of doses goes back from {cut.OldDoses} to {doses}";
        return cut.MayStartAs(RestProbe.Bytes(loop.Core)) ? null : "the state is neither the old nor the new one";
    }

    private string? JudgeLog(Cut cut, MainLoop loop)
    {
        _found.Clear();
        uint newest = 0;
        Logbook log = loop.Memory.Log;
        for (int place = 0; place < log.Places; place++)
        {
            if (!log.TryRead(place, _entry))
                continue;
            _found.Add(_entry.Sequence);

            // The number of an entry that was torn before its first byte is given to the start's own.
            bool known = cut.Old.Log.TryGetValue(_entry.Sequence, out (int Block, ulong Print) kept);
            if (known && kept.Print != Promises.PrintOf(_entry.What, _entry.Subject, _entry.UptimeS, _entry.Detail))
                return $"entry {_entry.Sequence} of the logbook says something else than was written";
            if (!known && _entry.Sequence <= newest)
                return $"entry {_entry.Sequence} of the logbook was never written";
            newest = _entry.Sequence;
        }

        foreach (uint number in cut.Old.Log.Keys)
        {
            // The start after the cut may itself turn to the oldest block, whose entries go with it.
            if (!_found.Contains(number) && cut.New.Log.ContainsKey(number) && !GoesBy(cut, log, number))
                return $"entry {number} of the logbook is lost";
        }

        return null;
    }

    private bool GoesBy(Cut cut, Logbook log, uint number) =>
        log.Ring.Newest == cut.Old.Log[number].Block - _layout.FirstLog && cut.Old.Log[number].Block != cut.NewestBlock;

    private void Violate(int byteCount, TearRest rest, string text) => _violations.Add(new PowerCutViolation(_number, _kind, byteCount, rest, text));

    /// <summary>Takes down what the main loop is promised.</summary>
    private sealed class PromiseLayer(SweepRun run, IBlockStorage inner) : IBlockStorage
    {
        public int BlockCount => inner.BlockCount;

        public int BlockLength => inner.BlockLength;

        public bool Read(int block, byte[] buffer) => inner.Read(block, buffer);

        public bool Write(int block, byte[] buffer, int length)
        {
            run._next = run._kept.Copy();
            run._next.Write(block, buffer.AsSpan(0, length));
            bool written = inner.Write(block, buffer, length);
            if (written)
                run._kept.Write(block, buffer.AsSpan(0, length));
            run._next = null;
            return written;
        }

        public bool Program(int block, int at, byte[] buffer, int length)
        {
            run._next = run._kept.Copy();
            run._next.Program(block, buffer.AsSpan(0, length));
            bool written = inner.Program(block, at, buffer, length);
            if (written)
                run._kept.Program(block, buffer.AsSpan(0, length));
            run._next = null;
            return written;
        }
    }

    /// <summary>Cuts each write in a copy before it is made.</summary>
    private sealed class CutLayer(SweepRun run) : IBlockStorage
    {
        public int BlockCount => run._live.BlockCount;

        public int BlockLength => run._live.BlockLength;

        public bool Read(int block, byte[] buffer) => run._live.Read(block, buffer);

        public bool Write(int block, byte[] buffer, int length) => run.Take(block, 0, buffer, length, program: false);

        public bool Program(int block, int at, byte[] buffer, int length) => run.Take(block, at, buffer, length, program: true);
    }

    /// <summary>What may come of a cut in one write.</summary>
    private sealed class Cut
    {
        private readonly List<byte[]> _mayStart = [];

        public Cut(Promises old, Promises next, RestProbe probe)
        {
            Old = old;
            New = next;
            FaultWaits = old.FaultPending && next.FaultPending;
            OldStarted = probe.Started(old.State, old.FaultPending);
            int latched = Latched(probe.Core);
            OldDoses = probe.Core.DosesCompleted;
            _mayStart.Add(OldStarted);
            foreach ((byte[] state, bool fault) in new[] { (old.State, next.FaultPending), (next.State, old.FaultPending), (next.State, next.FaultPending) })
            {
                _mayStart.Add(probe.Started(state, fault));
                latched &= Latched(probe.Core);
                OldDoses = Math.Min(OldDoses, probe.Core.DosesCompleted);
            }

            AlwaysLatched = latched;
            NewestBlock = old.Log.Count == 0 ? -1 : old.Log.MaxBy(entry => entry.Key).Value.Block;
        }

        /// <summary>The block that holds the newest entry of the logbook; -1 where there is none.</summary>
        public int NewestBlock { get; }

        public Promises Old { get; }

        public Promises New { get; }

        /// <summary>Alarms latched in the old state and in the new one.</summary>
        public int AlwaysLatched { get; }

        public bool FaultWaits { get; }

        public int OldDoses { get; }

        public byte[] OldStarted { get; }

        public bool MayStartAs(byte[] state) => _mayStart.Exists(one => one.AsSpan().SequenceEqual(state));

        private static int Latched(Controller core)
        {
            int latched = 0;
            for (int index = 0; index < AlarmTable.Count; index++)
                latched |= core.Alarms.IsLatched((AlarmId)index) ? 1 << index : 0;
            return latched;
        }
    }
}
