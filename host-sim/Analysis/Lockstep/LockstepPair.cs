using System;
using System.Collections.Generic;
using System.Numerics;
using LubeController.Analysis.Specification;

namespace LubeController.Analysis.Lockstep;

/// <summary>Core and specification side by side: fed the same inputs, compared after every scan.</summary>
internal sealed class LockstepPair
{
    private readonly SettingsValues _settings;
    private readonly Func<SettingsValues, ILockstepCore> _make;
    private readonly LubricationSpecification _spec;
    private readonly AlarmComparison _alarms;
    private readonly FirstUpComparison _firstUp;
    private ILockstepCore _core;
    private uint _nowMs;
    private bool _poweredUp = true;
    private int _doses;
    private int _refused;

    internal LockstepPair(
        SettingsValues settings, Func<SettingsValues, ILockstepCore> make, Func<SpecSettings, SpecSettings>? alter, SpecMisreadings misread,
        IReadOnlySet<LockstepAllowance> allowed)
    {
        _settings = settings;
        _make = make;
        SpecSettings specified = LockstepSettings.ToSpec(settings);
        _spec = new LubricationSpecification(alter is null ? specified : alter(specified), misread, LockstepAllowances.Readings(allowed));
        _alarms = new AlarmComparison(_spec);
        _firstUp = new FirstUpComparison(_spec, allowed.Contains(LockstepAllowance.FirstUpOfOneScan));
        _core = make(settings);
    }

    internal string SpecText => _spec.ToString();

    /// <summary>Does what a step begins with.</summary>
    internal void Do(LockstepStep step)
    {
        switch (step.Deed)
        {
            case LockstepDeed.PowerCut:
                CutPower();
                break;
            case LockstepDeed.CutByLogicFault:
                CutPower();
                _core.NoteLogicFault();
                _spec.NoteAtPowerUp(AlarmId.LogicFault);
                break;
            case LockstepDeed.CutWithCorruptStorage:
                CutPower();
                _core.NoteStorageCorrupt();
                _spec.NoteAtPowerUp(AlarmId.StorageCorrupt);
                break;
            case LockstepDeed.Shelve:
                _core.Shelve(step.Alarm, step.ForMs);
                CoreNumbers.ForEach(step.Alarm, alarm => _spec.Shelve(alarm, step.ForMs));
                break;
            case LockstepDeed.Unshelve:
                _core.Unshelve(step.Alarm);
                CoreNumbers.ForEach(step.Alarm, _spec.EndShelving);
                break;
            case LockstepDeed.TakeOutOfService:
                _core.SetOutOfService(step.Alarm, true);
                CoreNumbers.ForEach(step.Alarm, _spec.TakeOutOfService);
                break;
            case LockstepDeed.PutIntoService:
                _core.SetOutOfService(step.Alarm, false);
                CoreNumbers.ForEach(step.Alarm, _spec.ReturnToService);
                break;
            default:
                break;
        }
    }

    /// <summary>One scan of both.</summary>
    /// <returns>What differs, with both values, or null.</returns>
    internal string? Scan(LockstepInputs inputs, int elapsedMs)
    {
        _nowMs = unchecked(_nowMs + (uint)elapsedMs);
        if (_poweredUp)
        {
            // Counters count from power-up on, and no time has passed since.
            inputs = inputs with { ShaftPulses = 0, PumpRevolutions = 0 };
        }

        _core.Scan(inputs, _nowMs);
        SpecOutputs shown = _spec.Step(_poweredUp ? 0 : elapsedMs, LockstepSettings.Inputs(_settings, inputs));
        _poweredUp = false;
        Observation seen = _core.Observe();
        return CompareOutputs(seen, shown) ?? _alarms.Compare(seen) ?? _firstUp.Compare(seen.FirstUp, shown.FirstUp);
    }

    private void CutPower()
    {
        byte[] saved = _core.Save();
        _core = _make(_settings);
        _core.Restore(saved);
        _core.PowerUp();
        _spec.PowerCut();
        _poweredUp = true;
    }

    private string? CompareOutputs(Observation seen, SpecOutputs shown)
    {
        _doses += shown.DoseCompleted ? 1 : 0;
        _refused += BitOperations.PopCount((uint)shown.Refused);
        if (seen.Phase != (int)shown.Phase)
            return $"phase: core {PhaseWords.NameOf((Phase)seen.Phase)}, specification {PhaseWords.NameOf(shown.Phase)}";
        return Difference.Between("doses completed", seen.DosesCompleted, _doses)
            ?? Difference.Between("presses refused", seen.PressesRefused, _refused)
            ?? Difference.Between("pump", seen.Pump, shown.Pump)
            ?? Difference.Between("vent valve", seen.VentValve, shown.VentValve)
            ?? Difference.Between("healthy relay", seen.HealthyRelay, shown.HealthyRelay)
            ?? Difference.Between("warning output", seen.Warning, shown.WarningOutput)
            ?? Difference.Between("lamp", seen.Lamp, shown.Lamp);
    }
}
