using System;
using LubeController.Plant.Wiring;

namespace LubeController.Plant;

/// <summary>The circuit between output contacts and supervisory inputs: driven from outside, and nothing hydraulic depends on it.</summary>
public sealed partial class LubricationSystem
{
    private readonly FaultedWiring? _wiring;

    /// <summary>The circuit, to read from; null where none is described. Its faults are set as all faults are.</summary>
    public SupervisoryWiring? Wiring => _wiring?.Wiring;

    private FaultedWiring TheWiring => _wiring ?? throw new InvalidOperationException($"Plant '{Description.Name}' has no wiring.");

    /// <summary>Energises the relay of an output of the wiring, or lets it go, now.</summary>
    /// <param name="output">Index into the wiring's outputs.</param>
    /// <param name="energised">Whether it is energised.</param>
    /// <exception cref="InvalidOperationException">The plant has no wiring.</exception>
    public void SetWiringOutput(int output, bool energised)
    {
        NoteFaultEffects();
        TheWiring.SetOutput(output, energised, NowUs);
        ScheduleToggle();
        NoteFaultEffects();
    }

    /// <summary>Lets the relay of an output of the wiring go to and fro from now on, as a heartbeat does.</summary>
    /// <param name="output">Index into the wiring's outputs.</param>
    /// <exception cref="InvalidOperationException">The plant has no wiring.</exception>
    public void SetWiringOutputBeating(int output)
    {
        NoteFaultEffects();
        TheWiring.SetOutputBeating(output);
        NoteFaultEffects();
    }
}
