namespace LubeController.Analysis.Specification;

/// <summary>The debounced levels that are not cycle switches.</summary>
internal record struct Levels
{
    internal InputFilter MachineRunning;
    internal InputFilter Pressure;
    internal InputFilter Low;
    internal InputFilter Empty;
    internal InputFilter Overload;
    internal InputFilter Stop;
    internal InputFilter Start;
    internal InputFilter Acknowledge;
    internal InputFilter Reset;
    internal InputFilter DoseNow;
    internal InputFilter Prime;
    internal InputFilter OutputTest;

    /// <summary>Lets time pass.</summary>
    internal void Pass(int elapsedMs)
    {
        MachineRunning.Pass(elapsedMs);
        Pressure.Pass(elapsedMs);
        Low.Pass(elapsedMs);
        Empty.Pass(elapsedMs);
        Overload.Pass(elapsedMs);
        Stop.Pass(elapsedMs);
        Start.Pass(elapsedMs);
        Acknowledge.Pass(elapsedMs);
        Reset.Pass(elapsedMs);
        DoseNow.Pass(elapsedMs);
        Prime.Pass(elapsedMs);
        OutputTest.Pass(elapsedMs);
    }

    /// <summary>Sees all of them but the pressure switch.</summary>
    /// <returns>Fresh presses: a button, known to have been released, is accepted as down.</returns>
    internal Buttons Accept(SpecInputs inputs, SpecSettings settings)
    {
        MachineRunning.Accept(inputs.MachineRunning, settings.MachineRunningDebounceMs);
        Low.Accept(inputs.LevelLow, settings.LevelDebounceMs);
        Empty.Accept(inputs.LevelEmpty, settings.LevelDebounceMs);
        Overload.Accept(inputs.PumpOverload, settings.OverloadDebounceMs);
        Stop.Accept(inputs.Stop, settings.StopDebounceMs);
        return Press(ref Start, Buttons.Start) | Press(ref Acknowledge, Buttons.Acknowledge) | Press(ref Reset, Buttons.Reset)
            | Press(ref DoseNow, Buttons.DoseNow) | Press(ref Prime, Buttons.Prime) | Press(ref OutputTest, Buttons.OutputTest);

        Buttons Press(ref InputFilter filter, Buttons button) =>
            filter.Accept((inputs.Pressed & button) != 0, settings.ButtonDebounceMs) && filter.Level ? button : Buttons.None;
    }
}
