using System.Linq;
using LubeController.Plant;
using LubeController.Plant.Description;

namespace LubeController.Emulator;

/// <summary>Everything that records a run. None of it drives anything.</summary>
internal sealed class BenchRecorders(Trace trace, PlantDescription plant)
{
    /// <summary>What core and board show.</summary>
    public CoreRecorder Core { get; } = new(trace, plant.CycleSwitches.Select(cycle => cycle.Name).ToArray());

    /// <summary>What the plant does.</summary>
    public PlantRecorder Plant { get; } = new(trace, plant);

    /// <summary>What arrives through the supervisory wiring; null without one, and before <see cref="AddWiring"/>.</summary>
    public WiringRecorder? Wiring { get; private set; }

    /// <summary>Defines the signals of the wiring, if the plant has one.</summary>
    public void AddWiring(LubricationSystem system)
    {
        if (system.Wiring is not { } wiring)
            return;
        Wiring = new WiringRecorder(trace, wiring);
        Plant.Wiring = Wiring;
    }
}
