using System;
using System.Collections.Generic;
using System.Numerics;
using LubeController.Analysis.Specification;

namespace LubeController.Analysis.Lockstep;

/// <summary>Core and specification side by side: fed the same inputs, compared after every scan.</summary>
internal sealed class LockstepPair
{
    private static readonly int[] CoreNumbers = NumbersInTheCore();

    private readonly SettingsValues _settings;
    private readonly Func<SettingsValues, ILockstepCore> _make;
    private readonly LubricationSpecification _spec;
    private readonly bool _anyOfOneScan;
    private readonly HashSet<int> _firstUp = [];
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
        _anyOfOneScan = allowed.Contains(LockstepAllowance.FirstUpOfOneScan);
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
                InSpec(step.Alarm, alarm => _spec.Shelve(alarm, step.ForMs));
                break;
            case LockstepDeed.Unshelve:
                _core.Unshelve(step.Alarm);
                InSpec(step.Alarm, _spec.EndShelving);
                break;
            case LockstepDeed.TakeOutOfService:
                _core.SetOutOfService(step.Alarm, true);
                InSpec(step.Alarm, _spec.TakeOutOfService);
                break;
            case LockstepDeed.PutIntoService:
                _core.SetOutOfService(step.Alarm, false);
                InSpec(step.Alarm, _spec.ReturnToService);
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
        return CompareOutputs(seen, shown) ?? CompareAlarms(seen) ?? CompareFirstUp(seen.FirstUp, shown.FirstUp);
    }

    private static int[] NumbersInTheCore()
    {
        int[] numbers = new int[AlarmTable.All.Count];
        for (int index = 0; index < numbers.Length; index++)
            numbers[index] = LockstepSettings.CoreNumberOf((AlarmId)index);
        return numbers;
    }

    private static string? Unequal<T>(string what, T core, T spec)
        where T : IEquatable<T> => core.Equals(spec) ? null : $"{what}: core {core}, specification {spec}";

    private static byte StateOf(AlarmView alarm) => alarm.Lifecycle switch
    {
        Lifecycle.Normal => 0,
        Lifecycle.Acknowledged => 2,
        Lifecycle.Latched => 5,
        Lifecycle.Shelved => 6,
        Lifecycle.SuppressedByDesign => 7,
        Lifecycle.OutOfService => 8,
        _ when alarm.Active => 1,
        _ when alarm.Latched => 4,
        _ => 3,
    };

    private static int NumberOf(AlarmId? alarm) => alarm is AlarmId id ? CoreNumbers[(int)id] : -1;

    private static string NameOf(int number)
    {
        int index = Array.IndexOf(CoreNumbers, number);
        return index < 0 ? "none" : AlarmTable.All[index].Name;
    }

    private void InSpec(int coreNumber, Action<AlarmId> deed)
    {
        for (int index = 0; index < CoreNumbers.Length; index++)
        {
            if (CoreNumbers[index] == coreNumber)
                deed((AlarmId)index);
        }
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
            return $"phase: core {PhaseWords.Of((Phase)seen.Phase)}, specification {PhaseWords.Of(shown.Phase)}";
        return Unequal("doses completed", seen.DosesCompleted, _doses)
            ?? Unequal("presses refused", seen.PressesRefused, _refused)
            ?? Unequal("pump", seen.Pump, shown.Pump)
            ?? Unequal("vent valve", seen.VentValve, shown.VentValve)
            ?? Unequal("healthy relay", seen.HealthyRelay, shown.HealthyRelay)
            ?? Unequal("warning output", seen.Warning, shown.WarningOutput)
            ?? Unequal("lamp", seen.Lamp, shown.Lamp);
    }

    private string? CompareAlarms(Observation seen)
    {
        for (int index = 0; index < CoreNumbers.Length; index++)
        {
            AlarmRule rule = AlarmTable.All[index];
            if (rule.Id == AlarmId.OtherSwitchFault)
                continue;
            AlarmView view = rule.Id == AlarmId.CycleSwitchFault ? SwitchFaultView() : _spec.Alarm(rule.Id);
            AlarmObservation core = seen.Alarms[CoreNumbers[index]];
            AlarmRule demanded = _spec.Rule(Worst(rule.Id));
            string? difference = Unequal(rule.Name + " active", core.Active, view.Active)
                ?? Unequal(rule.Name + " latched", core.Latched, view.Latched);
            if (difference is null && core.State != StateOf(view))
                difference = $"{rule.Name} state: core {StateName(core.State)}, specification {StateName(StateOf(view))}";
            if (difference is null && view.Stands)
            {
                difference = Unequal(rule.Name + " category", core.Category, (byte)demanded.Category)
                    ?? Unequal(rule.Name + " action", core.Action, (byte)demanded.Action);
            }

            if (difference is not null)
                return difference;
        }

        return null;
    }

    /// <summary>
    /// The core has one alarm for what are two rows of the specification. It is active, latched, or waits to be acknowledged if
    /// either row is or does; whoever hides it hides both. Action and category are of the worse row that stands.
    /// </summary>
    private AlarmView SwitchFaultView()
    {
        AlarmView ending = _spec.Alarm(AlarmId.CycleSwitchFault);
        AlarmView other = _spec.Alarm(AlarmId.OtherSwitchFault);
        if (ending.Lifecycle is Lifecycle.Shelved or Lifecycle.SuppressedByDesign or Lifecycle.OutOfService)
            return ending with { Active = ending.Active || other.Active, Latched = ending.Latched || other.Latched };
        bool active = ending.Active || other.Active;
        bool latched = ending.Latched || other.Latched;
        Lifecycle seen = active ? Lifecycle.Acknowledged : latched ? Lifecycle.Latched : Lifecycle.Normal;
        Lifecycle state = Waits(ending) || Waits(other) ? Lifecycle.Unacknowledged : seen;
        return new AlarmView(state, active, latched, 0, ending.FirstUp || other.FirstUp);
    }

    private static bool Waits(AlarmView alarm) => alarm.Lifecycle is Lifecycle.Unacknowledged or Lifecycle.ReturnedUnacknowledged;

    private AlarmId Worst(AlarmId alarm) =>
        alarm == AlarmId.CycleSwitchFault && !_spec.Alarm(alarm).Stands ? AlarmId.OtherSwitchFault : alarm;

    private static string StateName(byte state) => state switch
    {
        0 => "normal",
        1 => "unacknowledged",
        2 => "acknowledged",
        3 => "returned unacknowledged",
        4 => "latched unacknowledged",
        5 => "latched acknowledged",
        6 => "shelved",
        7 => "suppressed by design",
        _ => "out of service",
    };

    /// <summary>Which alarms may be first up is settled in the scan in which the first is raised.</summary>
    private string? CompareFirstUp(int core, AlarmId? specified)
    {
        int spec = NumberOf(specified);
        if (!_firstUp.Contains(spec) || _spec.MarkedFirstUp)
        {
            _firstUp.Clear();
            _firstUp.Add(spec);
            for (int index = 0; index < CoreNumbers.Length && _anyOfOneScan && spec >= 0; index++)
            {
                if (((_spec.Raised >> index) & 1) != 0)
                    _firstUp.Add(CoreNumbers[index]);
            }
        }

        if (!_firstUp.Contains(core))
            return $"first up: core {NameOf(core)}, specification {NameOf(spec)}";
        _firstUp.RemoveWhere(number => number != core && number != spec);
        return null;
    }
}
