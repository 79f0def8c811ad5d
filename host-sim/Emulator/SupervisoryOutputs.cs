using System;
using LubeController.Core;
using LubeController.Plant;
using LubeController.Plant.Wiring;

namespace LubeController.Emulator;

/// <summary>Drives the contacts of the supervisory wiring from the controller's outputs.</summary>
internal sealed class SupervisoryOutputs(LubricationSystem plant)
{
    private readonly SupervisoryWiring? _wiring = plant.Wiring;

    /// <summary>Takes the outputs over to the contacts. Without power, or before the first completed scan, the heartbeat rests.</summary>
    public void Follow(Outputs outputs, bool beats)
    {
        for (int output = 0; output < _wiring?.Outputs.Count; output++)
        {
            switch (_wiring.Outputs[output])
            {
                case WiringOutputs.HealthyRelay:
                    plant.SetWiringOutput(output, outputs.HealthyRelay);
                    break;
                case WiringOutputs.Warning:
                    plant.SetWiringOutput(output, outputs.Warning);
                    break;
                case WiringOutputs.Lamp:
                    plant.SetWiringOutput(output, outputs.Lamp);
                    break;
                case WiringOutputs.Heartbeat when beats:
                    plant.SetWiringOutputBeating(output);
                    break;
                case WiringOutputs.Heartbeat:
                    plant.SetWiringOutput(output, false);
                    break;
                default:
                    throw new ArgumentException($"the wiring uses a contact of '{_wiring.Outputs[output]}', which is no output: use one of {string.Join(", ", WiringOutputs.All)}");
            }
        }
    }
}
