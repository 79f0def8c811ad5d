using System;
using System.Collections.Generic;
using LubeController.Core;

namespace LubeController.Emulator;

/// <summary>What people and other machines do to the controller: buttons, the operating stop, the machine's own signal, power.</summary>
public sealed class BenchControls
{
    private readonly Queue<(AlarmDeed Deed, AlarmId Alarm, int ForMs)> _asked = new();

    private readonly bool[] _down = new bool[Enum.GetValues<Button>().Length];
    private readonly int?[] _byHand = new int?[Enum.GetValues<HandInput>().Length];
    private readonly int[] _given = new int[Enum.GetValues<HandInput>().Length];

    /// <summary>Whether the board has power.</summary>
    public bool Power { get; set; } = true;

    /// <summary>Machine running.</summary>
    public bool MachineRunning { get; set; } = true;

    /// <summary>Operating stop; true is stop.</summary>
    public bool Stop { get; set; }

    /// <summary>Holds a button down, or lets it go.</summary>
    public void SetButton(Button button, bool down) => _down[(int)button] = down;

    /// <summary>Whether a button is held down.</summary>
    public bool IsDown(Button button) => _down[(int)button];

    /// <summary>Asks for something about what is shown of an alarm; it is done after the next scan. Without power nobody hears.</summary>
    /// <param name="deed">What.</param>
    /// <param name="alarm">The alarm.</param>
    /// <param name="forMs">How long it is shelved, milliseconds; means nothing for the other deeds.</param>
    public void Ask(AlarmDeed deed, AlarmId alarm, int forMs)
    {
        if (Power)
            _asked.Enqueue((deed, alarm, forMs));
    }

    /// <summary>Whether something was asked for that is not done yet.</summary>
    internal bool Asks => _asked.Count > 0;

    /// <summary>Does what was asked for.</summary>
    /// <param name="core">The core.</param>
    /// <param name="refused">Told each alarm that was not shelved.</param>
    internal void Obey(Controller core, Action<AlarmId> refused)
    {
        while (_asked.TryDequeue(out (AlarmDeed Deed, AlarmId Alarm, int ForMs) asked))
        {
            switch (asked.Deed)
            {
                case AlarmDeed.Shelve:
                    if (!core.Shelve(asked.Alarm, asked.ForMs))
                        refused(asked.Alarm);
                    break;
                case AlarmDeed.Unshelve:
                    core.Unshelve(asked.Alarm);
                    break;
                default:
                    core.SetOutOfService(asked.Alarm, asked.Deed == AlarmDeed.TakeOutOfService);
                    break;
            }
        }
    }

    /// <summary>Nobody hears what was asked for and not done.</summary>
    internal void Forget() => _asked.Clear();

    /// <summary>Holds an input by hand, or gives it back to its sensor.</summary>
    /// <param name="input">The input.</param>
    /// <param name="value">0 off and 1 on for a level, else a number in the unit of the input; null gives it back.</param>
    public void HoldInput(HandInput input, int? value)
    {
        if (IsCount(input))
            _given[(int)input] = value ?? 0;
        _byHand[(int)input] = value;
    }

    /// <summary>Whether an input is held by hand.</summary>
    internal bool IsHeld(HandInput input) => _byHand[(int)input] != null;

    /// <summary>What an input is held at by hand; null where it is not.</summary>
    internal int? Held(HandInput input) => _byHand[(int)input];

    /// <summary>Whether pulses or revolutions wait for the next scan.</summary>
    internal bool GivesCounts => _given[(int)HandInput.ShaftPulses] > 0 || _given[(int)HandInput.PumpRevolutions] > 0;

    /// <summary>The pulses or revolutions given by hand since this was last asked.</summary>
    internal int Take(HandInput input)
    {
        int count = _given[(int)input];
        _given[(int)input] = 0;
        return count;
    }

    /// <summary>Puts what is held by hand in the place of what sensors show.</summary>
    internal void Override(Inputs inputs)
    {
        for (int index = 0; index < _byHand.Length; index++)
        {
            if (_byHand[index] is { } value)
                Put(inputs, (HandInput)index, value);
        }
    }

    private static bool IsCount(HandInput input) => input is HandInput.ShaftPulses or HandInput.PumpRevolutions;

    private static void Put(Inputs inputs, HandInput input, int value)
    {
        switch (input)
        {
            case HandInput.LevelLow: inputs.LevelLow = value != 0; break;
            case HandInput.LevelEmpty: inputs.LevelEmpty = value != 0; break;
            case HandInput.PressureSwitch: inputs.PressureSwitch = value != 0; break;
            case HandInput.PumpOverload: inputs.PumpOverload = value != 0; break;
            case HandInput.Pressure: inputs.PressureMbar = value; break;
            case HandInput.Supply: inputs.SupplyMv = value; break;
            case HandInput.Temperature: inputs.TemperatureDeciC = value; break;
            case HandInput.ScanLate: inputs.ScanLate = value != 0; break;
            case HandInput.ShaftPulses or HandInput.PumpRevolutions: break;
            default: inputs.SetCycleSwitch((int)input, value != 0); break;
        }
    }

    internal void CopyTo(Inputs inputs)
    {
        inputs.MachineRunning = MachineRunning;
        inputs.Stop = Stop;
        for (int index = 0; index < _down.Length; index++)
            inputs.SetDown((Button)index, _down[index]);
    }
}
