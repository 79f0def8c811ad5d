using System;
using LubeController.Core;

namespace LubeController.Analysis.PowerCuts;

/// <summary>A core beside the one at work, that tells what a state means.</summary>
internal sealed class RestProbe
{
    private const int MostScans = 2_000;

    private readonly Inputs _inputs = new();
    private readonly Settings _settings;
    private readonly Func<IRestRule>? _makeRule;
    private readonly byte[] _state;
    private Controller _core;

    public RestProbe(Settings settings, Func<IRestRule>? makeRule)
    {
        _settings = settings;
        _makeRule = makeRule;
        _core = Fresh();
        _state = new byte[_core.StateLength];
        _inputs.MachineRunning = true;
        _inputs.LevelLow = settings.Is(SettingField.LevelLowInverted);
        _inputs.LevelEmpty = settings.Is(SettingField.LevelEmptyInverted);
        _inputs.PumpOverload = settings.Is(SettingField.OverloadInverted);
    }

    public Controller Core => _core;

    /// <summary>What a start makes of a saved state: its bytes, or those of a start without one where it is empty.</summary>
    public byte[] Started(ReadOnlySpan<byte> saved, bool fault)
    {
        if (saved.Length == 0)
        {
            _core = Fresh();
        }
        else
        {
            saved.CopyTo(_state);
            if (!_core.RestoreState(_state))
                throw new InvalidOperationException("a state that was saved is refused");
        }

        _core.PowerUp();
        if (fault)
            _core.NoteLogicFault();
        return Bytes(_core);
    }

    public static byte[] Bytes(Controller core)
    {
        byte[] bytes = new byte[core.StateLength];
        core.SaveState(bytes, StateUse.Step);
        return bytes;
    }

    /// <summary>Milliseconds of rest that are left in a state, by scanning on until a dose begins; -1 where none is under way.</summary>
    public int RestLeftMs(ReadOnlySpan<byte> state)
    {
        state.CopyTo(_state);
        _core.RestoreState(_state, StateUse.Step);
        if (_core.Phase != Phase.Rest || _core.DosePending)
            return -1;
        uint now = 0;
        for (int scan = 0; scan < MostScans; scan++)
        {
            _core.Scan(now);
            if (_core.Phase == Phase.Dose)
                return (int)now;
            if (_core.Phase != Phase.Rest || _core.NextDeadlineMs == Saturating.Never)
                return -1;
            now += (uint)_core.NextDeadlineMs;
        }

        return -1;
    }

    private Controller Fresh() => new(_inputs, new Outputs(), _settings, _makeRule?.Invoke());
}
