using System;

namespace LubeController.Plant.Numbers;

/// <summary>A hash over the bits of a state (FNV-1a over 64-bit words, finished by a shift), to tell two states apart.</summary>
internal struct Fingerprint
{
    private const ulong Prime = 1099511628211;

    private ulong _hash;

    internal readonly ulong Value => _hash ^ (_hash >> 32);

    internal void Add(double value) => Add(BitConverter.DoubleToUInt64Bits(value));

    internal void Add(long value) => Add(unchecked((ulong)value));

    internal void Add(bool value) => Add(value ? 1UL : 2UL);

    internal void Add(ulong value)
    {
        ulong mixed = (_hash == 0 ? 14695981039346656037 : _hash) ^ value;
        mixed = unchecked(mixed * Prime);
        _hash = mixed ^ (mixed >> 29);
    }
}
