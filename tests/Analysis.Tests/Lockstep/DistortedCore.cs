using System;
using System.Linq;
using LubeController.Analysis.Lockstep;

namespace LubeController.Analysis.Tests.Lockstep;

/// <summary>The deployed core, heard and seen through something that distorts.</summary>
internal sealed class DistortedCore(SettingsValues values) : ILockstepCore
{
    private readonly DeployedCore _core = new(values);
    private Observation? _before;
    private bool _lost;

    public Func<LockstepInputs, LockstepInputs>? Hears { get; init; }

    public Func<Observation, Observation, Observation>? Shows { get; init; }

    public Func<uint, uint>? Clock { get; init; }

    public int LosesAlarm { get; init; } = -1;

    public bool Forgets { get; init; }

    public void Scan(LockstepInputs inputs, uint nowMs) =>
        _core.Scan(Hears?.Invoke(inputs) ?? inputs, Clock?.Invoke(nowMs) ?? nowMs);

    public Observation Observe()
    {
        Observation seen = _core.Observe();
        Observation shown = Shows?.Invoke(seen, _before ?? seen) ?? seen;
        _before = seen;
        _lost &= LosesAlarm >= 0 && !seen.Alarms[LosesAlarm].Active;
        return _lost
            ? shown with { Alarms = [.. shown.Alarms.Select((alarm, index) => index == LosesAlarm ? default : alarm)] }
            : shown;
    }

    public byte[] Save() => _core.Save();

    public bool Restore(byte[] saved) => Forgets || _core.Restore(saved);

    public void PowerUp()
    {
        _lost = LosesAlarm >= 0;
        _core.PowerUp();
    }

    public void NoteLogicFault() => _core.NoteLogicFault();

    public void NoteStorageCorrupt() => _core.NoteStorageCorrupt();

    public void Shelve(int alarm, int forMs) => _core.Shelve(alarm, forMs);

    public void Unshelve(int alarm) => _core.Unshelve(alarm);

    public void SetOutOfService(int alarm, bool isOut) => _core.SetOutOfService(alarm, isOut);
}
