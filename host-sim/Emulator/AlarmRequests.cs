using System;
using System.Collections.Generic;
using LubeController.Core;

namespace LubeController.Emulator;

/// <summary>What people ask the controller to do about what is shown of an alarm; done after the next scan.</summary>
/// <param name="controls">Whether there is power: without it nobody hears.</param>
public sealed class AlarmRequests(BenchControls controls)
{
    private readonly Queue<(AlarmDeed Deed, AlarmId Alarm, int ForMs)> _waiting = new();

    /// <summary>Asks for something.</summary>
    /// <param name="deed">What.</param>
    /// <param name="alarm">The alarm.</param>
    /// <param name="forMs">How long it is shelved, milliseconds; means nothing for the other deeds.</param>
    public void Add(AlarmDeed deed, AlarmId alarm, int forMs)
    {
        if (controls.Power)
            _waiting.Enqueue((deed, alarm, forMs));
    }

    /// <summary>Whether a request waits.</summary>
    internal bool Waits => _waiting.Count > 0;

    /// <summary>Forgets what waits, as a controller without power does.</summary>
    internal void Clear() => _waiting.Clear();

    /// <summary>Carries out what waits.</summary>
    /// <param name="core">The core.</param>
    /// <param name="refused">Told each alarm that was not shelved.</param>
    internal void CarryOut(Controller core, Action<AlarmId> refused)
    {
        while (_waiting.TryDequeue(out (AlarmDeed Deed, AlarmId Alarm, int ForMs) asked))
        {
            switch (asked.Deed)
            {
                case AlarmDeed.Shelve:
                    if (!core.Shelve(asked.Alarm, asked.ForMs))
                        refused(asked.Alarm);
                    break;
                case AlarmDeed.Unshelve:
                    core.Unshelve(asked.Alarm);
                    break;
                default:
                    core.SetOutOfService(asked.Alarm, asked.Deed == AlarmDeed.TakeOutOfService);
                    break;
            }
        }
    }
}
