using System;
using System.Collections.Generic;
using LubeController.Core;

namespace LubeController.Emulator;

/// <summary>What people and other machines do to the controller: buttons, the operating stop, the machine's own signal, power.</summary>
public sealed class BenchControls
{
    private readonly Queue<(AlarmDeed Deed, AlarmId Alarm, int ForMs)> _asked = new();

    /// <summary>Whether the board has power.</summary>
    public bool Power { get; set; } = true;

    /// <summary>Machine running.</summary>
    public bool MachineRunning { get; set; } = true;

    /// <summary>Operating stop; true is stop.</summary>
    public bool Stop { get; set; }

    /// <summary>Start button.</summary>
    public bool Start { get; set; }

    /// <summary>Acknowledge button.</summary>
    public bool Acknowledge { get; set; }

    /// <summary>Reset button.</summary>
    public bool Reset { get; set; }

    /// <summary>Dose-now button.</summary>
    public bool DoseNow { get; set; }

    /// <summary>Prime button.</summary>
    public bool Prime { get; set; }

    /// <summary>Output test button.</summary>
    public bool OutputTest { get; set; }

    /// <summary>Holds a button down, or lets it go.</summary>
    public void SetButton(Button button, bool down)
    {
        switch (button)
        {
            case Button.Start:
                Start = down;
                break;
            case Button.Acknowledge:
                Acknowledge = down;
                break;
            case Button.Reset:
                Reset = down;
                break;
            case Button.DoseNow:
                DoseNow = down;
                break;
            case Button.OutputTest:
                OutputTest = down;
                break;
            default:
                Prime = down;
                break;
        }
    }

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

    internal void CopyTo(Inputs inputs)
    {
        inputs.MachineRunning = MachineRunning;
        inputs.Stop = Stop;
        inputs.Start = Start;
        inputs.Acknowledge = Acknowledge;
        inputs.Reset = Reset;
        inputs.DoseNow = DoseNow;
        inputs.Prime = Prime;
        inputs.OutputTest = OutputTest;
    }
}
