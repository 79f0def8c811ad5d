using System.Linq;
using LubeController.Plant.Wiring;

namespace LubeController.Emulator;

/// <summary>Records what arrives through the supervisory wiring: only what changed.</summary>
internal sealed class WiringRecorder
{
    private readonly Trace _trace;
    private readonly SupervisoryWiring _wiring;
    private readonly Signal[] _inputs;
    private readonly Signal[] _lamps;
    private readonly Signal[] _blown;

    /// <summary>Defines the signals of a wiring.</summary>
    public WiringRecorder(Trace trace, SupervisoryWiring wiring)
    {
        _trace = trace;
        _wiring = wiring;
        SupervisoryWiringDescription parts = _wiring.Description;
        _inputs = [.. parts.Inputs.Select((input, index) => trace.Define("supervisory." + input.Name, SignalKind.Step, "1", _wiring.StatesOf(index)))];
        _lamps = [.. parts.Lamps.Select(lamp => trace.Define("lit." + lamp.Name, SignalKind.OnOff, "1"))];
        _blown = [.. parts.Fuses.Select(fuse => trace.Define("blown." + fuse.Name, SignalKind.OnOff, "1"))];
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
