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
    private readonly PromiseLayer _storage;
    private readonly SweepBoard _board;
    private readonly Promises _kept;
    private readonly RestProbe _probe;
    private readonly RestartCheck _check;
    private readonly MemoryLayout _layout;
    private readonly WriteKinds _kinds;
    private readonly List<PowerCutViolation> _violations = [];
    private MainLoop? _loop;
    private bool _bootStands;
    private long _number;
    private WriteKind _kind;
    private long _swept;

    public SweepRun(PowerCutSetup setup, int job, CancellationToken cancel)
    {
        _setup = setup;
        _job = job;
        _cancel = cancel;
        _layout = new MemoryLayout(setup.BlockCount, setup.BlockLength);
        _kinds = new WriteKinds(_layout);
        _live = new FlashStorage(setup.BlockCount, setup.BlockLength);
        _trial = new FlashStorage(setup.BlockCount, setup.BlockLength, 7);
        _kept = new Promises(_layout);
        IBlockStorage cutting = new CutLayer(this);
        _storage = new PromiseLayer(_kept) { Inner = setup.Layer?.Invoke(cutting) ?? cutting };
        _check = new RestartCheck(setup, _layout, setup.Layer?.Invoke(_trial) ?? _trial);
        _board = new SweepBoard(setup) { PumpOn = PumpOn };
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
            _kinds.Begin();
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
        settings[SettingField.RestMs] = Math.Min(_setup.Settings[SettingField.RestMs] + (1000 * _board.TakeStoreRequest()), SettingTable.LongestMs);
        _kinds.BeginSettings();
        _loop.StoreSettings(settings);
    }

    private void PumpOn()
    {
        if (!_bootStands)
            Violate(-1, TearRest.Old, "the pump runs although no boot record of this start was written");
    }

    private bool CutAndWrite(int block, int at, byte[] buffer, int length, bool program)
    {
        _number++;
        _kind = _kinds.Next(block, program, IsErased(block), _loop);
        Writes[_kind]++;
        if (Writes[_kind] <= _setup.MostOfKind && _swept++ % _setup.Jobs == _job && _violations.Count < PowerCutSweep.MostViolations)
            Sweep(block, at, buffer, length, program);
        bool written = program ? _live.Program(block, at, buffer, length) : _live.Write(block, buffer, length);
        if (written && _layout.KindOf(block) == BlockKind.Boot)
            _bootStands = true;
        return written;
    }

    private bool IsErased(int block) => _live.Block(block)[..32].IndexOfAnyExcept((byte)0xFF) < 0;

    private void Sweep(int block, int at, byte[] buffer, int length, bool program)
    {
        var cut = new CutOutcomes(_kept, _storage.Next, _probe);
        CompareRest(cut);
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
                if (_check.Violated(cut) is not { } wrong)
                    continue;
                Violate(byteCount, rest, wrong);
                if (_violations.Count >= PowerCutSweep.MostViolations)
                    return;
            }
        }
    }

    /// <summary>What was saved last may be behind the core at work by one save interval.</summary>
    private void CompareRest(CutOutcomes cut)
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

    private void Violate(int byteCount, TearRest rest, string text) => _violations.Add(new PowerCutViolation(_number, _kind, byteCount, rest, text));

    /// <summary>Cuts each write in a copy before it is made.</summary>
    private sealed class CutLayer(SweepRun run) : IBlockStorage
    {
        public int BlockCount => run._live.BlockCount;

        public int BlockLength => run._live.BlockLength;

        public bool Read(int block, byte[] buffer) => run._live.Read(block, buffer);

        public bool Write(int block, byte[] buffer, int length) => run.CutAndWrite(block, 0, buffer, length, program: false);

        public bool Program(int block, int at, byte[] buffer, int length) => run.CutAndWrite(block, at, buffer, length, program: true);
    }
}
