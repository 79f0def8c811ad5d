namespace LubeController.Plant.Contacts;

/// <summary>A relay's changeover contact. SI units. Immutable.</summary>
public sealed record OutputContactDescription
{
    /// <summary>From coil current to the contact, us, 0 or more. Default 0; some ms are common.</summary>
    public long OperateUs { get; init; }

    /// <summary>From the end of coil current to the contact, us, 0 or more.</summary>
    public long ReleaseUs { get; init; }

    /// <summary>Bounce of the side that closes.</summary>
    public BounceDescription Bounce { get; init; } = BounceDescription.None;
}
