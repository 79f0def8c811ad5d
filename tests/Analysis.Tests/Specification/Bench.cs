using LubeController.Analysis.Specification;

namespace LubeController.Analysis.Tests.Specification;

/// <summary>
/// A specification with short times and no debounce, its inputs, and the hands that move them. One scan is 10 ms.
/// </summary>
internal sealed class Bench
{
    internal const int ScanMs = 10;

    /// <summary>Rest 1000, restart delay 200; a dose of two pulses; timeout 100 with one retry, allowance 50, pause 40.</summary>
    internal static readonly SpecSettings Short = new()
    {
        RestMs = 1000,
        RestShaftPulses = 20,
        FallbackMs = 1500,
        RestartDelayMs = 200,
        NewTryDelayMs = 200,
        ShaftTimeoutMs = 300,
        ShaftStandstillMs = 300,
        DosePulses = 2,
        DoseRunMs = 80,
        DoseLimitMs = 2000,
        Switches = [new SwitchSettings(100, 1)],
        FirstPulseAllowanceMs = 50,
        RetryPauseMs = 40,
        RunOnMs = 30,
        PrimeLimitMs = 300,
        OutputTestMs = 100,
        OverdueMs = 100_000,
        OverpressurePa = 30_000_000,
        ColdMilliCelsius = -10_000,
        SupplyLowMilliVolt = 18_000,
        ReadyDelayMs = 0,
        SwitchDebounceMs = 0,
        LevelDebounceMs = 0,
        OverloadDebounceMs = 0,
        StopDebounceMs = 0,
        MachineRunningDebounceMs = 0,
        ButtonDebounceMs = 0,
    };

    internal Bench(SpecSettings? settings = null)
    {
        Spec = new LubricationSpecification(settings ?? Short);
        Scan(0);
    }

    internal LubricationSpecification Spec { get; }

    internal SpecInputs Inputs { get; set; } = new();

    internal SpecOutputs Out => Spec.Outputs;

    internal Phase Phase => Spec.Outputs.Phase;

    internal SpecState State => Spec.State;

    internal SpecOutputs Scan(int elapsedMs = ScanMs) => Spec.Step(elapsedMs, Inputs);

    /// <summary>Scans until the time has passed.</summary>
    internal SpecOutputs Run(int durationMs)
    {
        for (int passed = 0; passed < durationMs; passed += ScanMs)
            Scan();
        return Out;
    }

    /// <summary>Presses and releases; returns what the scan of the press showed.</summary>
    internal SpecOutputs Press(Buttons buttons)
    {
        SpecInputs before = Inputs;
        Inputs = before with { Pressed = before.Pressed | buttons };
        SpecOutputs pressed = Scan();
        Inputs = before;
        Scan();
        return pressed;
    }

    /// <summary>One pulse, off to on and back.</summary>
    internal SpecOutputs Pulse(int cycleSwitch = 0)
    {
        Inputs = Inputs with { CycleSwitches = Inputs.CycleSwitches | 1 << cycleSwitch };
        SpecOutputs on = Scan();
        Inputs = Inputs with { CycleSwitches = Inputs.CycleSwitches & ~(1 << cycleSwitch) };
        Scan();
        return on;
    }

    /// <summary>One scan in which alarms are witnessed.</summary>
    internal SpecOutputs Witness(params AlarmId[] alarms)
    {
        SpecInputs before = Inputs;
        Inputs = before.WithWitness(alarms);
        SpecOutputs seen = Scan();
        Inputs = before;
        return seen;
    }

    internal void Stop(bool on) => Inputs = Inputs with { Stop = on };

    internal void Empty(bool on) => Inputs = Inputs with { LevelEmpty = on };

    internal void Supply(int milliVolt) => Inputs = Inputs with { SupplyMilliVolt = milliVolt };

    internal void Hold(Buttons buttons) => Inputs = Inputs with { Pressed = buttons };

    internal AlarmView Alarm(AlarmId alarm) => Spec.Alarm(alarm);

    /// <summary>Gives a whole dose from rest, so that a full rest begins with the position known.</summary>
    internal Bench Dosed()
    {
        Press(Buttons.DoseNow);
        for (int pulse = 0; pulse < 10 && Phase == Phase.Dose; pulse++)
            Pulse();
        return this;
    }

    /// <summary>Goes to a phase by the shortest way that a person would take.</summary>
    internal Bench To(Phase phase)
    {
        switch (phase)
        {
            case Phase.Dose:
                Press(Buttons.DoseNow);
                break;
            case Phase.RetryPause:
                Press(Buttons.DoseNow);
                Run(140);
                break;
            case Phase.Prime:
                Hold(Buttons.Prime);
                Scan();
                break;
            case Phase.Stopped:
                Stop(true);
                Scan();
                Stop(false);
                Scan();
                break;
            case Phase.Failed:
                Empty(true);
                Scan();
                Empty(false);
                Scan();
                break;
            case Phase.OutputTest:
                To(Phase.Stopped);
                Press(Buttons.OutputTest);
                break;
            default:
                break;
        }

        return this;
    }
}
