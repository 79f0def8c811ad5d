using System.Linq;
using LubeController.Core;
using LubeController.Plant;
using LubeController.Plant.Wiring;

namespace LubeController.Emulator;

/// <summary>Drives the supervisory wiring from the controller's outputs and records what arrives: only what changed.</summary>
internal sealed class WiringRecorder
{
    private readonly Trace _trace;
    private readonly LubricationSystem _plant;
    private readonly SupervisoryWiring _wiring;
    private readonly Signal[] _inputs;
    private readonly Signal[] _lamps;
    private readonly Signal[] _blown;

    /// <summary>Defines the signals of a plant's wiring, which it must have.</summary>
    public WiringRecorder(Trace trace, LubricationSystem plant)
    {
        _trace = trace;
        _plant = plant;
        _wiring = plant.Wiring!;
        SupervisoryWiringDescription parts = _wiring.Description;
        _inputs = [.. parts.Inputs.Select((input, index) => trace.Define("supervisory." + input.Name, SignalKind.Step, "1", _wiring.StatesOf(index)))];
        _lamps = [.. parts.Lamps.Select(lamp => trace.Define("lit." + lamp.Name, SignalKind.OnOff, "1"))];
        _blown = [.. parts.Fuses.Select(fuse => trace.Define("blown." + fuse.Name, SignalKind.OnOff, "1"))];
    }

    /// <summary>Takes the outputs over to the contacts. Without power, or before the first completed scan, the heartbeat rests.</summary>
    public void Follow(long timeUs, Outputs outputs, bool beats)
    {
        for (int output = 0; output < _wiring.Outputs.Count; output++)
        {
            switch (_wiring.Outputs[output])
            {
                case WiringOutputs.HealthyRelay:
                    _plant.SetWiringOutput(output, outputs.HealthyRelay);
                    break;
                case WiringOutputs.Warning:
                    _plant.SetWiringOutput(output, outputs.Warning);
                    break;
                case WiringOutputs.Lamp:
                    _plant.SetWiringOutput(output, outputs.Lamp);
                    break;
                case WiringOutputs.Heartbeat when beats:
                    _plant.SetWiringOutputBeating(output);
                    break;
                case WiringOutputs.Heartbeat:
                    _plant.SetWiringOutput(output, false);
                    break;
                default:
                    throw new System.ArgumentException($"the wiring uses a contact of '{_wiring.Outputs[output]}', which is no output: use one of {string.Join(", ", WiringOutputs.All)}");
            }
        }

        Record(timeUs);
    }

    /// <summary>Records every input, lamp and fuse.</summary>
    public void Record(long timeUs)
    {
        for (int index = 0; index < _inputs.Length; index++)
        {
            int before = _inputs[index].Count;
            _inputs[index].Record(timeUs, _wiring.StateOf(index));
            if (_inputs[index].Count != before && before > 0)
                _trace.Note(timeUs, "supervisory", $"{_wiring.Description.Inputs[index].Name} {_wiring.StatesOf(index)[_wiring.StateOf(index)]}");
        }

        for (int index = 0; index < _lamps.Length; index++)
            _lamps[index].Record(timeUs, _wiring.IsLit(index) ? 1 : 0);
        for (int index = 0; index < _blown.Length; index++)
            _blown[index].Record(timeUs, _wiring.IsBlown(index) ? 1 : 0);
    }
}
