using System;
using LubeController.Plant.Contacts;
using LubeController.Plant.Inputs;
using LubeController.Plant.Numbers;

namespace LubeController.Plant.Sensors;

/// <summary>
/// A switch, its cable and its input at work: from a target to a level. Time moves only by <see cref="AdvanceTo"/>; what
/// happens by itself (a switch becoming ready, a late output, bounce, a loose core) is foretold by <see cref="NextEventUs"/>.
/// Reading it allocates nothing.
/// </summary>
public sealed class SensorLoop
{
    private readonly ProximitySwitchDescription _switch;
    private readonly LoopCircuit _circuit;
    private readonly SensedTarget _target;
    private readonly DigitalInput _input;
    private readonly NamurAmplifier _amplifier;
    private readonly Bounce _contact;
    private readonly LooseCore _loose;
    private readonly long _halfPeriodUs;
    private long _outputAtUs = long.MaxValue;
    private long _readyAtUs = long.MaxValue;
    private bool _shown;
    private bool _supplied;
    private bool _ready;

    /// <summary>Makes a loop whose supply has just come; a target may already be there.</summary>
    /// <param name="description">The loop.</param>
    /// <param name="present">Whether the target is present.</param>
    /// <param name="seed">Seed of bounce, loose cores and seeded undefined levels.</param>
    /// <exception cref="ArgumentException">A value that the description does not allow; the message names it.</exception>
    public SensorLoop(SensorLoopDescription description, bool present, ulong seed)
    {
        ArgumentNullException.ThrowIfNull(description);
        SensorLoopCheck.Refuse(description);
        _switch = description.Switch;
        _circuit = new LoopCircuit(description);
        _target = new SensedTarget(_switch) { Present = present };
        _input = new DigitalInput(description.Input, description.Undefined, seed);
        _amplifier = new NamurAmplifier(description.Amplifier);
        var generator = new SeededGenerator(unchecked(seed + 1));
        _contact = new Bounce(_switch.Bounce, generator);
        _loose = new LooseCore(generator);
        _halfPeriodUs = _switch.SwitchingFrequencyHz > 0 ? (long)Math.Ceiling(500_000 / _switch.SwitchingFrequencyHz) : 0;
        _shown = _target.Judge();
        _contact.Set(Conducts(_shown));
        Evaluate();
    }

    /// <summary>Virtual time, us.</summary>
    public long NowUs { get; private set; }

    /// <summary>The level at the input.</summary>
    public bool On { get; private set; }

    /// <summary>What the input made of voltage and current.</summary>
    public InputReading Reading => _input.Reading;

    /// <summary>What the amplifier of a NAMUR switch made of its current.</summary>
    public NamurReading NamurReading => _amplifier.Reading;

    /// <summary>Voltage at the input, or across the amplifier's terminals, V; not a number where it floats.</summary>
    public double InputV { get; private set; }

    /// <summary>Current into the input, or out of the amplifier, A.</summary>
    public double InputA { get; private set; }

    /// <summary>Whether a closed two-wire output carries less than it needs, so that its level is undefined.</summary>
    public bool BelowMinimumLoad { get; private set; }

    /// <summary>Whether the target is sensed, whatever the output makes of it.</summary>
    public bool Sensed => _target.Sensed;

    /// <summary>When something next happens by itself, us; <see cref="long.MaxValue"/> for never.</summary>
    public long NextEventUs => Math.Min(Math.Min(_outputAtUs, _readyAtUs), Math.Min(_contact.NextUs, _loose.NextUs));

    /// <summary>Lets time pass.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Time runs backwards.</exception>
    public void AdvanceTo(long timeUs)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(timeUs, NowUs);
        while (NextEventUs <= timeUs)
        {
            NowUs = NextEventUs;
            Happen();
            Evaluate();
        }

        NowUs = timeUs;
    }

    /// <summary>Says whether the target is present.</summary>
    public void SetPresent(bool present)
    {
        if (_target.Present == present)
            return;
        _target.Present = present;
        Follow();
    }

    /// <summary>Moves the target further away than described, m; 0 heals.</summary>
    public void SetTargetOffset(double offsetM)
    {
        _target.OffsetM = offsetM;
        Follow();
    }

    /// <summary>Covers the switch's face, or cleans it.</summary>
    public void SetSoiling(Soiling soiling)
    {
        _target.Soiling = soiling;
        Follow();
    }

    /// <summary>Changes the supply, V, 0 or more.</summary>
    public void SetSupply(double volts)
    {
        _circuit.SetSupply(volts);
        Evaluate();
    }

    /// <summary>Breaks a core at the controller's end, or mends it.</summary>
    public void SetCoreBroken(CableCore core, bool broken)
    {
        _circuit.SetBroken(core, broken);
        Evaluate();
    }

    /// <summary>Adds a resistance to a core, ohm; 0 heals.</summary>
    public void SetCoreOhms(CableCore core, double ohms)
    {
        _circuit.SetExtraOhms(core, ohms);
        Evaluate();
    }

    /// <summary>Lets two cores touch, or parts them.</summary>
    public void SetCoresShorted(CableCore core, CableCore other, bool shorted)
    {
        _circuit.SetCoresShorted(core, other, shorted);
        Evaluate();
    }

    /// <summary>Lets a core touch the supply's plus, or parts them.</summary>
    public void SetCoreToSupply(CableCore core, bool touches)
    {
        _circuit.SetToSupply(core, touches);
        Evaluate();
    }

    /// <summary>Lets a core touch ground, or parts them.</summary>
    public void SetCoreToGround(CableCore core, bool touches)
    {
        _circuit.SetToGround(core, touches);
        Evaluate();
    }

    /// <summary>Swaps two cores at the switch, or puts them right; one pair at a time.</summary>
    public void SetCoresSwapped(CableCore core, CableCore other, bool swapped)
    {
        _circuit.SetSwapped(core, other, swapped);
        Evaluate();
    }

    /// <summary>Lets a core make and break under vibration, each for half to one and a half of its mean time.</summary>
    /// <param name="core">The core; one at a time.</param>
    /// <param name="meanMadeUs">Mean time that it conducts, us, 2 or more.</param>
    /// <param name="meanBrokenUs">Mean time that it does not, us, 2 or more.</param>
    public void SetCoreLoose(CableCore core, long meanMadeUs, long meanBrokenUs)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(meanMadeUs, 2);
        ArgumentOutOfRangeException.ThrowIfLessThan(meanBrokenUs, 2);
        _loose.Start(NowUs, core, meanMadeUs, meanBrokenUs);
    }

    /// <summary>Makes a loose core sound.</summary>
    public void StopCoreLoose()
    {
        _loose.Stop();
        _circuit.SetBroken(_loose.Core, false);
        Evaluate();
    }

    private bool Conducts(bool sensed) => sensed != (_switch.Contact == SwitchContact.NormallyClosed);

    private bool NeedsSupply => _switch.Output is SwitchOutput.Pnp or SwitchOutput.Npn;

    // A state must last half a period of the switching frequency before the output shows it.
    private void Follow()
    {
        bool sensed = _target.Judge();
        if (sensed == _shown)
            _outputAtUs = long.MaxValue;
        else if (_halfPeriodUs == 0)
            Show();
        else if (_outputAtUs == long.MaxValue)
            _outputAtUs = NowUs + _halfPeriodUs;
        Evaluate();
    }

    private void Show()
    {
        _outputAtUs = long.MaxValue;
        _shown = _target.Sensed;
        if (_switch.Output == SwitchOutput.DryContact)
            _contact.Move(NowUs, Conducts(_shown));
        else
            _contact.Set(Conducts(_shown));
    }

    private void Happen()
    {
        if (NowUs == _outputAtUs)
        {
            Show();
        }
        else if (NowUs == _readyAtUs)
        {
            _readyAtUs = long.MaxValue;
            _ready = true;
        }
        else if (NowUs == _contact.NextUs)
        {
            _contact.Toggle();
        }
        else
        {
            _circuit.SetBroken(_loose.Core, _loose.Toggle());
        }
    }

    private void Evaluate()
    {
        LoopAnswer answer = _circuit.Answer(Closed);
        if (NeedsSupply || _switch.Output == SwitchOutput.TwoWire)
            answer = WithSupplyHeeded(answer);
        InputV = answer.InputV;
        InputA = answer.InputA;
        if (_switch.Output == SwitchOutput.Namur)
        {
            On = _amplifier.Read(answer.InputA);
            return;
        }

        BelowMinimumLoad = _switch.Output == SwitchOutput.TwoWire && Closed && answer.OutputA < _switch.MinimumLoadA;
        On = _input.Take(BelowMinimumLoad ? InputReading.Undefined : _input.Judge(answer.InputV, answer.InputA));
    }

    private bool Closed => _contact.Closed && (_ready || _switch.Output is SwitchOutput.Namur or SwitchOutput.DryContact);

    /// <summary>Looks whether the switch has the supply it needs, with its output as it stands, and starts its ready delay.</summary>
    private LoopAnswer WithSupplyHeeded(LoopAnswer answer)
    {
        // A two-wire switch lives on the loop: what it has is what lies across it while its output is open.
        double suppliedV = NeedsSupply ? answer.SuppliedV : _circuit.Answer(false).SuppliedV;
        bool supplied = suppliedV >= _switch.LeastSupplyV;
        if (supplied == _supplied)
            return answer;
        _supplied = supplied;
        _ready = supplied && _switch.ReadyDelayUs == 0;
        _readyAtUs = supplied && !_ready ? NowUs + _switch.ReadyDelayUs : long.MaxValue;
        return _circuit.Answer(Closed);
    }
}
