namespace LubeController.Board;

/// <summary>Blocks of the storage that hold something corrupt, one bit each; from the 129th block on they share bits with the first ones.</summary>
public sealed class CorruptPlaces
{
    /// <summary>Bytes that <see cref="Write"/> writes.</summary>
    public const int Length = 4 * WordCount;

    private const int WordCount = 4;
    private const int BitsOfWord = 32;

    private readonly int[] _words = new int[WordCount];

    /// <summary>Writes the marks.</summary>
    /// <param name="bytes">Takes <see cref="Length"/> bytes.</param>
    /// <param name="at">Where they begin.</param>
    public void Write(byte[] bytes, int at)
    {
        for (int index = 0; index < WordCount; index++)
            ByteOrder.Put(bytes, at + (4 * index), (uint)_words[index]);
    }

    /// <summary>Reads what <see cref="Write"/> wrote.</summary>
    public void Read(byte[] bytes, int at)
    {
        for (int index = 0; index < WordCount; index++)
            _words[index] = (int)ByteOrder.Get(bytes, at + (4 * index));
    }

    /// <summary>Marks a block, from 0.</summary>
    public void Mark(int block)
    {
        int bit = block & ((WordCount * BitsOfWord) - 1);
        _words[bit / BitsOfWord] |= 1 << (bit & (BitsOfWord - 1));
    }

    /// <summary>Takes over every mark.</summary>
    public void CopyFrom(CorruptPlaces other)
    {
        for (int index = 0; index < WordCount; index++)
            _words[index] = other._words[index];
    }

    /// <summary>Drops the marks that another does not have.</summary>
    public void KeepOnly(CorruptPlaces other)
    {
        for (int index = 0; index < WordCount; index++)
            _words[index] &= other._words[index];
    }

    /// <summary>Whether every mark is one of another, too.</summary>
    public bool AreAllIn(CorruptPlaces other)
    {
        for (int index = 0; index < WordCount; index++)
        {
            if ((_words[index] & ~other._words[index]) != 0)
                return false;
        }

        return true;
    }
}
