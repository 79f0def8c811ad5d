using LubeController.Core;
using LubeController.Plant;

namespace LubeController.Emulator;

/// <summary>The board's output pins: they switch the pump's contact, the vent valve and the contacts of the supervisory wiring.</summary>
internal sealed class OutputPins(LubricationSystem plant, BenchRecorders recorders)
{
    private readonly SupervisoryOutputs _supervisory = new(plant);
    private readonly Outputs _released = new();
    private Outputs _shown = new();

    /// <summary>The board starts: its pins show nothing yet.</summary>
    public void Begin() => _shown = _released;

    /// <summary>Shows the outputs of a scan.</summary>
    /// <param name="outputs">The outputs.</param>
    /// <param name="completed">Whether the scan was completed, which the heartbeat follows.</param>
    public void Write(Outputs outputs, bool completed)
    {
        recorders.Core.RecordOutputs(plant.NowUs, outputs);
        _shown = outputs;
        plant.SetPumpContact(outputs.Pump);
        plant.SetVentValve(outputs.VentValve);
        Follow(outputs, completed);
    }

    /// <summary>Scans are completed no more: outputs stay, the heartbeat rests.</summary>
    public void StopBeating() => Follow(_shown, beats: false);

    /// <summary>The board lets all outputs drop.</summary>
    public void Release()
    {
        recorders.Core.RecordOutputs(plant.NowUs, _released);
        ReleaseSupervisory();
        plant.SetPumpContact(false);
        plant.SetVentValve(false);
    }

    /// <summary>The contacts of the supervisory wiring drop.</summary>
    public void ReleaseSupervisory() => Follow(_released, beats: false);

    private void Follow(Outputs outputs, bool beats)
    {
        _supervisory.Follow(outputs, beats);
        recorders.Wiring?.Record(plant.NowUs);
    }
}
