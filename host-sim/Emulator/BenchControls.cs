using LubeController.Core;

namespace LubeController.Emulator;

/// <summary>What people and other machines do to the controller: buttons, the operating stop, the machine's own signal, power.</summary>
public sealed class BenchControls
{
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
            default:
                Prime = down;
                break;
        }
    }

    internal void CopyTo(Inputs inputs)
    {
        inputs.MachineRunning = MachineRunning;
        inputs.Stop = Stop;
        inputs.Start = Start;
        inputs.Acknowledge = Acknowledge;
        inputs.Reset = Reset;
        inputs.DoseNow = DoseNow;
        inputs.Prime = Prime;
    }
}
