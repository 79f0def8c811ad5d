using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Plant.Circuits;
using LubeController.Plant.Contacts;

namespace LubeController.Plant.Wiring;

/// <summary>The outputs that drive a wiring, and the contacts that their relays move.</summary>
internal sealed class DrivenContacts
{
    private readonly Circuit _circuit;
    private readonly WiringContactState[] _contacts;
    private readonly bool[] _normallyOpenClosed;
    private readonly bool[] _normallyClosedClosed;
    private readonly bool[] _beating;

    internal DrivenContacts(IReadOnlyList<WiringContact> contacts, Circuit circuit, WiringTerminals terminals)
    {
        _circuit = circuit;
        Names = [.. contacts.Select(contact => contact.Output).Distinct(StringComparer.Ordinal)];
        _normallyOpenClosed = new bool[Names.Count];
        _normallyClosedClosed = new bool[Names.Count];
        _beating = new bool[Names.Count];
        Array.Fill(_normallyClosedClosed, true);
        _contacts = [.. contacts.Select(contact => MakeContact(contact, terminals))];
        for (int output = 0; output < Names.Count; output++)
            MoveContacts(output);
    }

    /// <summary>The outputs that the contacts name, in order of first mention.</summary>
    internal IReadOnlyList<string> Names { get; }

    /// <summary>Whether an output's relay goes to and fro.</summary>
    internal bool AnyBeats => Array.IndexOf(_beating, true) >= 0;

    /// <summary>Says which sides of an output's contact are closed.</summary>
    /// <returns>Whether that is new.</returns>
    internal bool SetSides(int output, bool normallyOpenClosed, bool normallyClosedClosed)
    {
        if (!_beating[output] && _normallyOpenClosed[output] == normallyOpenClosed && _normallyClosedClosed[output] == normallyClosedClosed)
            return false;
        _normallyOpenClosed[output] = normallyOpenClosed;
        _normallyClosedClosed[output] = normallyClosedClosed;
        _beating[output] = false;
        MoveContacts(output);
        return true;
    }

    /// <summary>Lets an output's relay go to and fro.</summary>
    /// <returns>Whether that is new.</returns>
    internal bool SetBeating(int output)
    {
        if (_beating[output])
            return false;
        SetSides(output, false, true);
        _beating[output] = true;
        return true;
    }

    internal void SetWelded(int contact, bool welded)
    {
        _contacts[contact].Welded = welded;
        MoveContacts(_contacts[contact].Output);
    }

    internal void SetExtraOhms(int contact, double extraOhms)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(extraOhms);
        _contacts[contact].ExtraOhms = extraOhms;
        MoveContacts(_contacts[contact].Output);
    }

    /// <summary>Moves all relays that go to and fro to one of their two positions.</summary>
    internal void MoveBeating(bool energised)
    {
        for (int output = 0; output < Names.Count; output++)
        {
            if (!_beating[output])
                continue;
            _normallyOpenClosed[output] = energised;
            _normallyClosedClosed[output] = !energised;
            MoveContacts(output);
        }
    }

    /// <summary>Takes over the positions of the same outputs of another wiring.</summary>
    /// <returns>Whether any is new.</returns>
    internal bool CopyPositions(DrivenContacts other)
    {
        bool changed = false;
        for (int output = 0; output < Names.Count; output++)
        {
            changed |= SetSides(output, other._normallyOpenClosed[output], other._normallyClosedClosed[output]);
            if (other._beating[output])
                changed |= SetBeating(output);
        }

        return changed;
    }

    private WiringContactState MakeContact(WiringContact contact, WiringTerminals terminals)
    {
        int conductor = _circuit.AddConductor(contact.Name, terminals.Node(contact.From), terminals.Node(contact.To), double.PositiveInfinity);
        int output = 0;
        while (Names[output] != contact.Output)
            output++;
        return new WiringContactState(contact, output, conductor);
    }

    private void MoveContacts(int output)
    {
        foreach (WiringContactState contact in _contacts)
        {
            if (contact.Output == output)
                _circuit.SetOhms(contact.Conductor, contact.Ohms(IsClosed(contact)));
        }
    }

    private bool IsClosed(WiringContactState contact)
    {
        if (contact.Welded)
            return true;
        foreach (WiringContactState other in _contacts)
        {
            if (other.Output == contact.Output && other.Side != contact.Side && other.Welded)
                return false;
        }

        return contact.Side == ContactSide.NormallyOpen ? _normallyOpenClosed[contact.Output] : _normallyClosedClosed[contact.Output];
    }
}
