using System;
using LubeController.Plant.Numbers;

namespace LubeController.Plant.Contacts;

/// <summary>A side of a changeover contact.</summary>
public enum ContactSide
{
    /// <summary>Closed while the relay is energised.</summary>
    NormallyOpen,

    /// <summary>Closed while the relay is not energised.</summary>
    NormallyClosed,
}

/// <summary>
/// The changeover contact of a relay output in time: it follows its coil after a delay, bounces where it closes, may weld,
/// and may lose its coil. Between the two sides it touches neither.
/// </summary>
public sealed class OutputContact
{
    private readonly OutputContactDescription _description;
    private readonly Bounce _closing;
    private long _moveAtUs = long.MaxValue;
    private bool _commanded;
    private bool _armature;
    private bool _coilBroken;
    private ContactSide? _welded;

    /// <summary>Makes a contact whose coil carries no current.</summary>
    /// <param name="description">The contact.</param>
    /// <param name="seed">Seed of its bounce.</param>
    public OutputContact(OutputContactDescription description, ulong seed)
    {
        ArgumentNullException.ThrowIfNull(description);
        ArgumentOutOfRangeException.ThrowIfNegative(description.OperateUs);
        ArgumentOutOfRangeException.ThrowIfNegative(description.ReleaseUs);
        _description = description;
        _closing = new Bounce(description.Bounce, new SeededGenerator(seed));
        _closing.Set(true);
    }

    /// <summary>Virtual time, us.</summary>
    public long NowUs { get; private set; }

    /// <summary>When the contact next changes by itself, us; <see cref="long.MaxValue"/> when it rests.</summary>
    public long NextEventUs => Math.Min(_moveAtUs, _closing.NextUs);

    /// <summary>Lets time pass.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Time runs backwards.</exception>
    public void AdvanceTo(long timeUs)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(timeUs, NowUs);
        while (NextEventUs <= timeUs)
        {
            NowUs = NextEventUs;
            if (NowUs == _moveAtUs)
                Throw();
            else
                _closing.Toggle();
        }

        NowUs = timeUs;
    }

    /// <summary>Energises the coil, or lets it go.</summary>
    public void Command(bool energised)
    {
        _commanded = energised;
        Drive();
    }

    /// <summary>Breaks the coil, or mends it.</summary>
    public void SetCoilBroken(bool broken)
    {
        _coilBroken = broken;
        Drive();
    }

    /// <summary>Welds one side shut, whatever the coil does; null frees the contact.</summary>
    public void SetWelded(ContactSide? side) => _welded = side;

    /// <summary>Whether a side is closed.</summary>
    public bool IsClosed(ContactSide side)
    {
        // A welded side holds the armature: the other side cannot close.
        if (_welded is { } welded)
            return side == welded;
        return _closing.Closed && _armature == (side == ContactSide.NormallyOpen);
    }

    private void Drive()
    {
        bool energised = _commanded && !_coilBroken;
        if (energised == _armature)
        {
            _moveAtUs = long.MaxValue;
            return;
        }

        long delay = energised ? _description.OperateUs : _description.ReleaseUs;
        if (delay == 0)
            Throw();
        else if (_moveAtUs == long.MaxValue)
            _moveAtUs = NowUs + delay;
    }

    private void Throw()
    {
        _moveAtUs = long.MaxValue;
        _armature = !_armature;
        // The side that is left opens cleanly; the one that is reached bounces open and shut.
        _closing.Set(false);
        _closing.Move(NowUs, true);
    }
}
